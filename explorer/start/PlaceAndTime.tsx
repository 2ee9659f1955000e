import { lazy, Show, Suspense } from "solid-js";
import type { Town } from "../../engine/towns/index.ts";
import { TypedBox } from "../parts/TypedBox.tsx";
import { DeviceAct } from "../place/DeviceAct.tsx";
import { TownSearch } from "../place/TownSearch.tsx";
import { makePlaceHeight } from "./makePlaceHeight.ts";
import { rounded } from "./mapView.ts";
import { momentField, numberField, type StartFields } from "./startFields.tsx";
import { Question, StartField } from "./startParts.tsx";

// The outlines and the climate come only when a place is picked.
const PlaceMap = lazy(() => import("./PlaceMap.tsx"));

/** The place. */
export function WhereQuestion({ fields }: { fields: StartFields }) {
  const { id, answers, setAnswers } = fields;
  const height = makePlaceHeight(fields);
  let nameGiven = answers.placeName;
  const take = ({ name, lat, lon }: Town) => {
    const isOwnName = answers.placeName !== nameGiven;
    setAnswers({ latitudeDeg: lat, longitudeDeg: lon, ...(isOwnName ? {} : { placeName: name }) });
    if (!isOwnName) nameGiven = name;
  };
  return (
    <Question
      n={1}
      title="Where?"
      says="Type a town; or click the map, or use the arrow keys on it; or type the position."
    >
      <TownSearch onPick={take} />
      <DeviceAct
        onFound={(latitudeDeg, longitudeDeg) =>
          setAnswers({ latitudeDeg: rounded(latitudeDeg), longitudeDeg: rounded(longitudeDeg) })
        }
      />
      <Suspense fallback={<p class="map-wait">The map is on its way …</p>}>
        <PlaceMap
          latitudeDeg={answers.latitudeDeg}
          longitudeDeg={answers.longitudeDeg}
          elevationM={answers.elevationM}
          onMove={(latitudeDeg, longitudeDeg) => setAnswers({ latitudeDeg, longitudeDeg })}
        />
      </Suspense>
      <div class="start-fields">
        <StartField label="Name of the place">
          <TypedBox
            id={`${id}-name`}
            label="Name of the place"
            value={answers.placeName}
            room={20}
            onCommit={(text) => text.trim() !== "" && setAnswers("placeName", text.trim().slice(0, 200))}
          />
        </StartField>
        {numberField(fields, "latitudeDeg", "Latitude", "°", -90, 90)}
        {numberField(fields, "longitudeDeg", "Longitude", "°", -180, 180)}
        {numberField(fields, "elevationM", "Height above the sea", "m", -450, 6000)}
        <Show when={height.words() !== ""}>
          <p class="height-says" aria-live="polite">
            {height.words()}
          </p>
        </Show>
      </div>
    </Question>
  );
}

/** The days. */
export function WhenQuestion({ fields }: { fields: StartFields }) {
  return (
    <Question n={2} title="When?" says="By the local clock of the place, at most 60 days.">
      <div class="start-fields">
        {momentField(fields, "start", "Begins")}
        {momentField(fields, "end", "Ends")}
      </div>
    </Question>
  );
}

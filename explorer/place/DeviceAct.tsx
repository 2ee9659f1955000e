import { createSignal } from "solid-js";
import { accuracyWords, devicePosition } from "./devicePosition.ts";

/** Takes the position of the device, when somebody asks for it; says how exact it is, or why there is none. */
export function DeviceAct(props: { onFound: (latitudeDeg: number, longitudeDeg: number) => void }) {
  const [says, setSays] = createSignal("");
  const [isAsking, setAsking] = createSignal(false);
  const ask = async () => {
    setAsking(true);
    setSays("Asking the device …");
    const found = await devicePosition(navigator.geolocation as Geolocation | undefined);
    setAsking(false);
    setSays(found.ok ? accuracyWords(found.accuracyM) : found.why);
    if (found.ok) props.onFound(found.latitudeDeg, found.longitudeDeg);
  };
  return (
    <div class="device">
      <button
        type="button"
        class="act"
        disabled={isAsking()}
        title="Some browsers ask a service of their maker where the device is"
        onClick={() => void ask()}
      >
        Where this device is
      </button>
      <span class="device-says" role="status">
        {says()}
      </span>
    </div>
  );
}

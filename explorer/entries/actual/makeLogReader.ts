import { createSignal } from "solid-js";
import type { LogDelivery, LogOrder } from "./logWorker.ts";
import type { LogRead } from "./readLog.ts";

/** The part of a Worker that is needed here. */
export interface LogWorkshop {
  postMessage(order: LogOrder): void;
  onmessage: ((event: MessageEvent<LogDelivery>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** Has logs read by a worker; of several orders the newest counts. */
export function makeLogReader(makeWorkshop: () => LogWorkshop) {
  const [read, setRead] = createSignal<LogRead | null>(null);
  const [isReading, setReading] = createSignal(false);
  const [fault, setFault] = createSignal("");
  let workshop: LogWorkshop | null = null;
  let number = 0;

  function fail(why: string): void {
    setReading(false);
    setFault(`The log could not be read: ${why}.`);
  }

  function shop(): LogWorkshop {
    if (workshop !== null) return workshop;
    workshop = makeWorkshop();
    workshop.onmessage = ({ data }) => {
      if (data.number !== number) return;
      if ("fault" in data) return fail(data.fault);
      setReading(false);
      setRead(data.read);
    };
    workshop.onerror = (event) => fail(event.message ?? "no reason given");
    return workshop;
  }

  return {
    read,
    isReading,
    fault,
    order(asked: Omit<LogOrder, "number">): void {
      number++;
      setFault("");
      setReading(true);
      shop().postMessage({ ...asked, number });
    },
    refuse(sentence: string): void {
      number++;
      setReading(false);
      setRead(null);
      setFault(sentence);
    },
    /** Puts the file away. */
    close(): void {
      number++;
      setReading(false);
      setRead(null);
      setFault("");
    },
  };
}

/** Reads a meter's log away from the page, so that ten megabytes of it hold nobody up. */
import "../../noEval.ts";
import { type LogAsked, type LogRead, readLog } from "./readLog.ts";

/** An order without a text is about the file that was sent last. */
export type LogOrder = { readonly number: number } & Omit<LogAsked, "text"> & { readonly text?: string };

export type LogDelivery =
  | { readonly number: number; readonly read: LogRead }
  | { readonly number: number; readonly fault: string };

let text = "";

self.onmessage = ({ data }: MessageEvent<LogOrder>) => {
  text = data.text ?? text;
  let delivery: LogDelivery;
  try {
    delivery = { number: data.number, read: readLog({ ...data, text }) };
  } catch (error) {
    delivery = { number: data.number, fault: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(delivery);
};

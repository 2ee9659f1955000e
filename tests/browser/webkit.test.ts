import { findWebKit } from "./driveWebKit.ts";
import { walks } from "./walks.ts";

walks("WebKit", findWebKit());

import { findFirefox } from "./driveFirefox.ts";
import { walks } from "./walks.ts";

walks("Firefox", findFirefox());

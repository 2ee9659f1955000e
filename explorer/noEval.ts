import { config } from "zod";

// The page's own policy forbids code made from text; without this the schemas would try it once, and the browser would complain.
config({ jitless: true });

/**
 * packing: what to take along. What a club owns (ownedThing, as CSV in ownedCsv); every set that can be packed of it for a plan (packingPlan: banks
 * made of batteries, panels with lead and controller, generators); which of them reach a target and are beaten by none in mass, minutes and money
 * (runPacking, members counted in packingTask). Reads reach, odds and task.
 */

/** answers/packing: what to take along: which sets of what the club has reach a target. What other folders may take of it. */

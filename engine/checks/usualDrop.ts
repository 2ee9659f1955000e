/** Share of its volts that a run of cable may lose where nobody says otherwise: 3 %, as `LIMIT_RULES.drop` cites it. */
export const USUAL_DROP_SHARE = 0.03;

import type { ActivityModel } from "../evaporation/activity.ts";
import type { Flag } from "./flag.ts";

/** By which of two methods the parts of a mixture were taken to lift each other's vapour. */
export const flagsOfVapour = (method: ActivityModel["method"], field: string): Flag[] =>
  method === "original UNIFAC"
    ? [
        {
          code: "original-unifac",
          field,
          message:
            "A ketone or an ester is in it: activity coefficients are by the older UNIFAC, which puts vapour pressures at room temperature up to 13 % off.",
        },
      ]
    : [];

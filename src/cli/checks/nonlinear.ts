import { certifiedCurve, curveFit } from "./curves.ts";
import type { Topic } from "./topic.ts";

export const topic: Topic = { kinds: { "nist-nonlinear": certifiedCurve, "curve-fit": curveFit } };

/** Up to this share of wax a resin is called dewaxed. Common practice: dewaxed grades hold 0.2–1 %, natural ones 3–5 %. */
export const dewaxedUpTo = 0.01;

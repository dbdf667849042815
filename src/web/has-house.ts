/** Whether a server keeps the notebook beside this browser. Pages built as plain files have none: what is written lies on this device and in the person's own file. */
export const hasHouse = import.meta.env.MODE !== "no-house";

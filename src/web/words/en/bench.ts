export const bench = {
  title: "Bench",
};

export const book = {
  title: "Book",
};

/** The waits of a schedule from the air that is expected. */
export const airWaits = {
  heading: "Waits from the air that you expect",
  temperature: "Air temperature",
  humidity: "Relative humidity",
  after: (wait: string) => `firm enough for the next after ${wait}.`,
  never: "not firm enough for the next in three days.",
  white: { likely: "It will turn white in this air.", possible: "It may turn white in this air." },
  take: "Put these waits in",
  taken: "The waits are those of this air.",
  says: "Reckoned from how each coat dries on what lies beneath it, on wood as warm as the air. Good to a factor of 3 either way (fitted to practice), so the waits of common practice or your own log may serve you better; padded coats after the third wait longer in practice.",
};

/** Why the server did not start: one plain sentence with what to do. */
export class StartUpProblem extends Error {
  override readonly name = "StartUpProblem";
}

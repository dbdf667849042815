/** The page of a board of a trial, at one of its patches. */
export const boardPath = (trial: string, board: string, patch?: string): string =>
  `/trials/${trial}/boards/${encodeURIComponent(board)}${patch === undefined ? "" : `?patch=${encodeURIComponent(patch)}`}`;

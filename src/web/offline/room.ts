import { createSignal } from "solid-js";

/** What the browser says of its room for this address. */
export interface Room {
  /** The browser promises not to drop it by itself; undefined where it does not say. */
  readonly persisted: boolean | undefined;
  readonly usedBytes: number | undefined;
  readonly ofBytes: number | undefined;
}

const [room, setRoom] = createSignal<Room>({
  persisted: undefined,
  usedBytes: undefined,
  ofBytes: undefined,
});

export { room };

/** Nine tenths full: time to save a file and make room. */
const nearlyFullShare = 0.9;
export const isNearlyFull = ({ usedBytes, ofBytes }: Room): boolean =>
  usedBytes !== undefined && ofBytes !== undefined && usedBytes > nearlyFullShare * ofBytes;

const everyMs = 60_000;

/** Plain HTTP pages have no `navigator.storage`, and no promise either. */
const storage = (): StorageManager | undefined => navigator.storage;

export async function lookAtRoom(): Promise<void> {
  const manager = storage();
  if (manager?.estimate === undefined) return;
  const { usage, quota } = await manager.estimate();
  setRoom({ persisted: await manager.persisted?.(), usedBytes: usage, ofBytes: quota });
}

/** Asks the browser not to drop what is kept here; true when it promises. */
export async function askToPersist(): Promise<boolean> {
  const promised = (await storage()?.persist?.()) ?? false;
  await lookAtRoom();
  return promised;
}

export function watchRoom(): void {
  void lookAtRoom();
  setInterval(() => !document.hidden && void lookAtRoom(), everyMs);
}

import { expect, test } from "vitest";
import { Keeper, type KeeperNews } from "./keeper.ts";
import { MemoryKeep } from "./memory-keep.ts";

/** A browser's store that refuses as a full one does. */
class Store extends MemoryKeep {
  override readonly lasting = true;
  full = false;
  override async keepWritten(...args: Parameters<MemoryKeep["keepWritten"]>) {
    this.#mayBeFull();
    return super.keepWritten(...args);
  }
  override async keepImported(...args: Parameters<MemoryKeep["keepImported"]>) {
    this.#mayBeFull();
    return super.keepImported(...args);
  }
  #mayBeFull(): void {
    if (this.full) throw new DOMException("no room", "QuotaExceededError");
  }
}

const written = (seq: number) => ({ id: `e${seq}`, seq, text: JSON.stringify({ id: `e${seq}`, seq }) });

function keeperOf(store: Store) {
  const said: string[] = [];
  const news: KeeperNews = {
    kept: () => undefined,
    keepsNoMore: (why) => said.push(why),
    keepsAgain: () => said.push("again"),
  };
  return { keeper: new Keeper("n", store, news), said };
}

test("a full store is said once; what came meanwhile is carried over, with its state and number, once there is room", async () => {
  const store = new Store("device");
  const { keeper, said } = keeperOf(store);
  keeper.keep(written(1));
  await keeper.idle();
  store.full = true;
  for (const seq of [2, 3]) {
    keeper.keep(written(seq));
    await keeper.idle();
  }
  expect(said).toEqual(["no-room"]);
  await keeper.settleSent(["e2"]);
  await keeper.tryAgain();
  expect((await store.rows("n")).map(({ id }) => id)).toEqual(["e1"]);
  store.full = false;
  await keeper.tryAgain();
  expect(said).toEqual(["no-room", "again"]);
  expect((await store.rows("n")).map(({ id, state }) => `${id} ${state}`)).toEqual([
    "e1 to-send",
    "e2 sent",
    "e3 to-send",
  ]);
  keeper.keep(written(4));
  await keeper.idle();
  expect((await store.rows("n")).map(({ text }) => JSON.parse(text).seq)).toEqual([1, 2, 3, 4]);
});

import { createMemo, createSignal } from "solid-js";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { airView } from "../../core/views/air.ts";
import type { ShopAir } from "../../core/views/coat-setup.ts";
import { isFresh } from "../bench/state.ts";
import type { OpenBook } from "../book-store/open-book.ts";
import { fields, readQuantity } from "../controls/read-quantity.ts";
import { now } from "../shell/now.ts";

/** The air as it is being typed. */
export interface TypedAir {
  readonly temperature: string;
  readonly humidity: string;
  readonly wood: string;
}

export type AirDraft = ReturnType<typeof createAirDraft>;

/** The air of the shop: what stands in the open fields as soon as it can be read, else what was read last and is not old. */
export function createAirDraft(book: OpenBook) {
  const [typed, setTyped] = createSignal<TypedAir>();
  const logged = book.view("air", airView);
  const fresh = createMemo(() => {
    const read = logged();
    return read !== null && isFresh(read.at, Date.parse(now())) ? read : null;
  });
  const readings = createMemo(() => {
    const t = typed();
    if (t === undefined) return undefined;
    return {
      temperature: readQuantity(t.temperature, fields.airTemperature),
      humidity: readQuantity(t.humidity, fields.relativeHumidity),
      wood: readQuantity(t.wood, fields.airTemperature),
    };
  });
  /** What stands in the fields, where all of it can be read; wood that is not told is as warm as the air. */
  const asTyped = createMemo((): ShopAir | null => {
    const read = readings();
    if (read === undefined || !read.temperature.ok || !read.humidity.ok) return null;
    const woodTold = typed()?.wood.trim() !== "";
    if (woodTold && !read.wood.ok) return null;
    const temperature = read.temperature.value.si;
    return {
      temperature,
      relativeHumidity: read.humidity.value.si,
      wood: read.wood.ok ? read.wood.value.si : temperature,
    };
  });
  function open(): void {
    const before = book.look("last-air", (read) => read.ofKind("air-read").at(-1)?.body) as
      | Body<"air-read">
      | undefined;
    setTyped({
      temperature: before?.temperature.typed ?? "",
      humidity: before?.relativeHumidity.typed ?? "",
      wood: before?.wood?.typed ?? "",
    });
  }
  return {
    typed,
    readings,
    asTyped,
    logged,
    fresh,
    /** What the pages reckon with. */
    air: (): ShopAir | null => (typed() === undefined ? fresh() : asTyped()),
    open,
    close: () => setTyped(undefined),
    set: (change: Partial<TypedAir>) => setTyped((was) => (was === undefined ? was : { ...was, ...change })),
  };
}

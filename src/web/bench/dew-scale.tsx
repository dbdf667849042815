import type { DewMargin } from "../../core/views/air.ts";
import { known, withPlaces } from "../words/number.ts";
import { words } from "../words/words.ts";

const width = 338;
const celsius = (kelvin: number): number => kelvin - 273.15;

/** The dew point with its give or take, hatched where it is wet, and the wood on the same scale. */
export function DewScale(props: { readonly dew: DewMargin; readonly wood: number }) {
  const span = () => Math.max(6, Math.abs(props.dew.margin) + 4);
  const from = () => Math.min(celsius(props.dew.dewPoint), celsius(props.wood)) - span() * 0.3;
  const x = (c: number) => 8 + ((c - from()) / (span() * 1.1)) * (width - 40);
  const dew = () => celsius(props.dew.dewPoint);
  const wood = () => celsius(props.wood);
  const by = () => props.dew.dewGiveOrTake;
  const near = () => Math.abs(x(wood()) - x(dew())) < 92;
  const dewText = () => `${known(dew(), by()).value} ± ${known(dew(), by()).by}`;
  const read = () =>
    words.bench.marginAria(
      words.controls.giveOrTake(`${known(dew(), by()).value} °C`, known(dew(), by()).by),
      `${withPlaces(wood(), 1)} °C`,
      `${withPlaces(props.dew.margin, 1)} °C`,
    );
  return (
    <svg class="dew-scale" viewBox={`0 0 ${width} 80`} font-size="17" role="img" aria-label={read()}>
      <defs>
        <pattern id="wet" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V7" stroke="var(--ink)" stroke-width="2.4" />
        </pattern>
      </defs>
      <rect y="28" width={Math.max(0, x(dew()))} height="24" fill="url(#wet)" />
      <path class="pen" d={`M0 52H${width}M${x(dew())} 22V52M${x(wood())} 34V52`} />
      <path class="cal" d={`M${x(dew() - by())} 48V27H${x(dew() + by())}V48`} />
      <circle class="dot" cx={x(dew())} cy="42" r="6.5" />
      <text y="18" x="0">
        {words.bench.dewBelow}
      </text>
      <text x={x(wood())} y={near() ? 18 : 30} class="m b">
        {words.bench.wood}
      </text>
      <text x={Math.max(34, x(dew()))} y="74" class={near() ? "e" : "m"} dx={near() ? 30 : 0}>
        {dewText()}
      </text>
      <text x={x(wood())} y="74" class={near() ? "b" : "m b"} dx={near() ? 4 : 0}>
        {withPlaces(wood(), 1)} °C
      </text>
    </svg>
  );
}

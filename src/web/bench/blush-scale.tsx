import { createMemo } from "solid-js";
import { spread } from "../drawings/spread.ts";
import { known, withPlaces } from "../words/number.ts";
import * as words from "../words/words.ts";

const width = 338;
const least = 6;

/** Dew point, coldest film and wood on one scale: hatched where it is wet, the film with its give or take. In °C. */
export function BlushScale(props: {
  readonly dew: number;
  readonly film: number;
  readonly giveOrTake: number;
  readonly wood: number;
}) {
  const scale = createMemo(() => {
    const low = Math.min(props.dew, props.film - props.giveOrTake, props.wood);
    const high = Math.max(props.dew, props.film + props.giveOrTake, props.wood);
    const span = Math.max(least, (high - low) * 1.3);
    return { from: low - span * 0.2, span: span * 1.2 };
  });
  const x = (c: number) => 4 + ((c - scale().from) / scale().span) * (width - 8);
  const film = () => known(props.film, props.giveOrTake);
  const jaws = () => [x(props.film - props.giveOrTake), x(props.film + props.giveOrTake)] as const;
  const names = createMemo(() =>
    spread(
      [
        { at: x(props.dew) / 2, width: 94 },
        { at: x(props.film), width: 100 },
        { at: x(props.wood), width: 48 },
      ],
      0,
      width,
    ),
  );
  const figures = createMemo(() =>
    spread(
      [
        { at: x(props.dew), width: 50 },
        { at: x(props.film), width: 100 },
        { at: x(props.wood), width: 66 },
      ],
      0,
      width,
    ),
  );
  const says = () =>
    words.drying.blush.scale(
      `${withPlaces(props.dew, 1)} °C`,
      words.controls.giveOrTake(`${film().value} °C`, film().by),
      `${withPlaces(props.wood, 1)} °C`,
    );
  return (
    <svg class="dew-scale" viewBox={`0 0 ${width} 78`} font-size="17" role="img" aria-label={says()}>
      <defs>
        <pattern
          id="wet-air"
          width="7"
          height="7"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path d="M0 0V7" stroke="var(--ink)" stroke-width="2.4" />
        </pattern>
      </defs>
      <rect y="26" width={Math.max(0, x(props.dew))} height="24" fill="url(#wet-air)" />
      <path class="pen" d={`M0 50H${width}M${x(props.dew)} 22V50M${x(props.wood)} 34V50`} />
      <rect class="under-jaws" x={jaws()[0]} y="24" width={jaws()[1] - jaws()[0]} height="25" />
      <path class="cal" d={`M${jaws()[0]} 46V24H${jaws()[1]}V46`} />
      <circle class="dot" cx={x(props.film)} cy="38" r="6.5" />
      <text x={names()[0]} y="16" class="m">
        {words.bench.dewBelow}
      </text>
      <text x={names()[1]} y="16" class="m b">
        {words.drying.blush.coldest}
      </text>
      <text x={names()[2]} y="16" class="m">
        {words.bench.wood}
      </text>
      <text x={figures()[0]} y="73" class="m">
        {withPlaces(props.dew, 1)}
      </text>
      <text x={figures()[1]} y="73" class="m b">
        {film().value} ± {film().by}
      </text>
      <text x={figures()[2]} y="73" class="m">
        {withPlaces(props.wood, 1)} °C
      </text>
    </svg>
  );
}

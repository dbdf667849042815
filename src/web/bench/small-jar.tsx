/** The jar at the bench: its code, and how full it still is of what it held. */
export function SmallJar(props: { readonly code: string; readonly share: number }) {
  const top = () => 79 - 52 * Math.min(1, Math.max(0, props.share));
  return (
    <svg class="small-jar" width="60" height="90" viewBox="0 0 56 84" aria-hidden="true">
      <path d={`M7 ${top()}H49V76Q49 81 44 81H12Q7 81 7 76Z`} fill="var(--finish)" />
      <path class="fine" d={`M7 ${top()}H49`} />
      <path
        class="pen"
        d="M13 14V20Q7 23 7 29V76Q7 81 12 81H44Q49 81 49 76V29Q49 23 43 20V14M10 4H46V14H10Z"
      />
      <text
        class="m b"
        x="28"
        y="46"
        font-size={props.code.length > 3 ? "14" : "20"}
        fill={top() < 38 ? "var(--on-finish)" : "var(--ink)"}
      >
        {props.code}
      </text>
    </svg>
  );
}

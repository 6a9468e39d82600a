/** A code to scan, dark on light whatever the colours of the page: a reader needs it so. */
import { type CodePicture, QUIET } from './code-picture.ts';

/** `side` with its quiet zone, px; left out: as wide as its place */
export function CodeView(props: { code: CodePicture; side?: number; label: string }) {
  const whole = (): number => props.code.size + 2 * QUIET;
  return (
    <svg
      class="code-view"
      role="img"
      aria-label={props.label}
      viewBox={`${-QUIET} ${-QUIET} ${whole()} ${whole()}`}
      width={props.side}
      height={props.side}
      shape-rendering="crispEdges"
    >
      <rect x={-QUIET} y={-QUIET} width={whole()} height={whole()} fill="#fff" />
      <path d={props.code.path} fill="#000" />
    </svg>
  );
}

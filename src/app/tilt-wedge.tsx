/** The tilt against the upright: a wedge over and under the mass centre, behind the figure; a small one is not drawn. */
import { type JSX, Show } from 'solid-js';

/** Under this, degrees, no wedge is drawn. */
const NO_WEDGE = 2;
/** m: how far it reaches from the mass centre */
const REACH = 1.15;

export function TiltWedge(props: { deg: number; x: number; y: number; pxPerM: number }): JSX.Element {
  const reach = (): number => REACH * props.pxPerM;
  const side = (): readonly [number, number] => {
    const turn = (props.deg * Math.PI) / 180;
    return [-reach() * Math.sin(turn), reach() * Math.cos(turn)];
  };
  const wedge = (sign: 1 | -1): string => {
    const [dx, dy] = side();
    return `M${props.x} ${props.y} v${-sign * reach()} L${props.x + sign * dx} ${props.y - sign * dy} Z`;
  };
  const axis = (): string => {
    const [dx, dy] = side();
    return `M${props.x + dx} ${props.y - dy} L${props.x - dx} ${props.y + dy}`;
  };
  return (
    <svg class="tilt-wedge" aria-hidden="true">
      <Show when={Math.abs(props.deg) >= NO_WEDGE}>
        <path class="wedge" d={wedge(1) + wedge(-1)} />
        <path class="axis" d={axis()} />
      </Show>
      <path class="upright" d={`M${props.x} ${props.y - reach()} v${2 * reach()}`} />
    </svg>
  );
}

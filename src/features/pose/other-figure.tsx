/** Another version of the athlete, held upright as the figure beside it: hatched, to be seen and not to be grabbed. */
import { createMemo } from 'solid-js';
import { usePage } from '../../app/page.ts';
import type { StageVersion } from '../../pictures/stage-input.ts';
import { useHeldFit } from './held-fit.ts';

/** A body folded at the hips by more than this, rad, is seen from its side. */
const FOLDED = 0.7;

export function OtherFigure(props: {
  version: Pick<StageVersion, 'letter' | 'result'>;
  width: number;
  height: number;
  label: string;
}) {
  const page = usePage();
  const { cursor, services } = page;
  const angles = createMemo(() => {
    const { result } = props.version;
    return services.posing.anglesAt(result, Math.min(cursor.at(), result.flight.duration));
  });
  const azimuth = (): number => {
    const { body } = props.version.result.flight;
    const isFolded = body.angles.some(({ name }, a) => name.startsWith('hipFlexion') && angles()[a] > FOLDED);
    return isFolded ? Math.PI / 2 : 0;
  };
  // as large as the figure beside it
  const size = useHeldFit(
    page,
    () => ({ width: props.width, height: props.height, beside: props.width / 2 }),
    () => [azimuth()],
  );
  const picture = createMemo(() =>
    services.pictures.held({
      result: props.version.result,
      angles: angles(),
      outlined: props.version.letter,
      azimuth: azimuth(),
      width: props.width,
      height: props.height,
      ...size(),
    }),
  );
  return (
    <svg
      class="other-figure"
      role="img"
      aria-label={props.label}
      width={props.width}
      height={props.height}
      // eslint-disable-next-line solid/no-innerhtml -- markup made by our own scene writer from numbers alone
      innerHTML={picture().markup}
    />
  );
}

/** A tool on the ground of a laptop: the shapes stay on the ruler, the tool takes the rest. */

import { Show } from 'solid-js';
import { ShapeRow } from '../../../features/ruler/shape-row.tsx';
import type { TimeAxis } from '../../../ui/plot/axis.ts';
import { LEFT } from '../../bench-columns.ts';
import type { Tool } from '../../tool.ts';
import { texts } from '../../words.ts';
import { FilledPlace } from './filled-place.tsx';
import { fillsHead, hasOwnAir } from './tool-list.ts';
import { ToolPlace } from './tool-place.tsx';

const TILE = 46;
const SHAPES = TILE + 18 + 12;
/** what touches, along the whole skill, and metres under the side view */
const STRIP = 24;

/** the caution of the bench, where its pictures are away */
const CAUTION = 22;

export function GroundTool(props: {
  tool: Tool;
  axis: TimeAxis;
  width: number;
  height: number;
  /** px over the floor */
  pictures: number;
  isTall: boolean;
}) {
  const hasShapes = (): boolean => !fillsHead(props.tool) && !hasOwnAir(props.tool) && !props.isTall;
  const shapes = (): number => (props.tool.hasPictures ? STRIP : hasShapes() ? SHAPES : 0);
  const hasCaution = (): boolean => props.isTall || hasOwnAir(props.tool);
  const caution = (): number => (hasCaution() ? CAUTION : 0);
  return (
    <section class="ground" style={{ height: `${props.height}px` }} aria-label={texts.plots.label}>
      <Show when={hasShapes()}>
        <div class="row-title" style={{ top: '4px' }}>
          <h2>{texts.shapes.title}</h2>
          <p class="quiet">{texts.shapes.hint}</p>
        </div>
        <div class="time-column" style={{ left: `${LEFT}px`, width: `${props.axis.width}px`, height: `${SHAPES}px` }}>
          <div class="shape-place" style={{ top: '4px', height: `${TILE + 18}px` }}>
            <ShapeRow axis={props.axis} tile={TILE} names="all" />
          </div>
        </div>
      </Show>
      <Show when={props.tool.hasPictures}>
        <FilledPlace name="strip" style={{ height: `${STRIP}px` }} />
      </Show>
      <div class="tool-under" style={{ top: `${shapes()}px` }}>
        <ToolPlace
          tool={props.tool}
          axis={props.axis}
          width={props.width}
          height={props.height - shapes() - caution()}
          timeLeft={LEFT}
          device="bench"
          isTall={props.tool.fillsAir ? undefined : props.isTall}
          pictures={props.pictures}
          shapes={(row) => <ShapeRow {...row} names="all" />}
        />
        <Show when={hasCaution()}>
          <p class="standing tool-caution">{texts.standingCaution}</p>
        </Show>
      </div>
    </section>
  );
}

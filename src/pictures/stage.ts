/** Joins the rooms that draw: poses of the engine, pictures of the scene, the canvas of the renderer. */

import { resolveTime } from '../../sim/math/anchor.ts';
import { calcHeldPose, makePoser, type Poser } from '../engine/poses.ts';
import type { FlightResult } from '../engine/result.ts';
import { readTokens } from '../render/read-tokens.ts';
import { createRenderer } from '../render/renderer.ts';
import type { RendererKind } from '../render/stage-renderer.ts';
import { flightScene } from '../scene/flight-scene.ts';
import { frontScene } from '../scene/front-scene.ts';
import { withPlainBodies } from '../scene/plain-bodies.ts';
import { ghostTimes, type StageFlight, type StagePose } from '../scene/pose-frames.ts';
import { type DrawItem, joinScenes, type Scene } from '../scene/scene.ts';
import { shapeTileSvg } from '../scene/shape-tile.ts';
import { sideScene } from '../scene/side-scene.ts';
import { topScene } from '../scene/top-scene.ts';
import { uprightScene } from '../scene/upright-scene.ts';
import type { OtherVersion } from '../scene/version-ghost.ts';
import { heldView } from '../scene/view.ts';
import { drawHeld, drawPoseTile, findFigures } from './pose-picture.ts';
import { putText } from './put-text.ts';
import type { StageFigure, StageHandle, StageInput, StagePictures, ViewPlace } from './stage-input.ts';
import { makeStageFlight } from './staged-flight.ts';

interface Staged {
  readonly flight: StageFlight;
  readonly pose: Poser;
}

/** Asked once: a context takes longer to make than a picture to draw, and each layout mounts a canvas of its own. */
let slow: boolean | undefined;

/**
 * WebGL by software is several times slower than the 2D canvas for pictures like ours; a browser that has only that is
 * asked for the canvas first. "?renderer=webgl" (or canvas, webgpu) in the address decides otherwise, for measuring.
 */
function choosePreferred(): RendererKind | undefined {
  const asked = new URLSearchParams(location.search).get('renderer');
  if (asked === 'webgl' || asked === 'webgpu' || asked === 'canvas') return asked;
  slow ??= isWebglSlow();
  return slow ? 'canvas' : undefined;
}

function isWebglSlow(): boolean {
  // a browser that knows its WebGL for slow gives none here, and need not start it
  const gl = document.createElement('canvas').getContext('webgl', { failIfMajorPerformanceCaveat: true });
  if (!gl) return true;
  const info = gl.getExtension('WEBGL_debug_renderer_info');
  const name = String(gl.getParameter(info ? info.UNMASKED_RENDERER_WEBGL : gl.RENDERER));
  gl.getExtension('WEBGL_lose_context')?.loseContext();
  return /swiftshader|llvmpipe|software|basic render/i.test(name);
}

const staged = new WeakMap<FlightResult, Staged>();

/** What the stage needs of a result, made once for each. */
function getStaged(result: FlightResult): Staged {
  const known = staged.get(result);
  if (known) return known;
  const { flight, frames, outline } = result;
  const pose = makePoser(flight, frames);
  const ghosts = ghostTimes(flight.duration).map(pose);
  const made: Staged = {
    pose,
    flight: {
      ...makeStageFlight(result.key, result, ghosts),
      rough: result.draft,
      wantedSomersault: outline.verdict.ending.kind === 'inAir' ? undefined : outline.wantedSomersault,
    },
  };
  staged.set(result, made);
  return made;
}

/** The other versions of the skill at this instant; what would stand before its take-off or after its landing waits there. */
function getOthers({ extras, cursorS }: StageInput): OtherVersion[] {
  return (extras.versions ?? []).map(({ letter, result, shiftS }) => {
    const { flight, pose } = getStaged(result);
    return { letter, flight, shiftS, cursor: pose(Math.min(Math.max(cursorS + shiftS, 0), flight.duration)) };
  });
}

function drawView(
  place: ViewPlace,
  input: StageInput,
  flight: StageFlight,
  cursor: StagePose,
  others: readonly OtherVersion[],
): Scene {
  const { width, height, floorY, pxPerM, x0 } = place;
  const window = { width, height, floorY, pxPerM, x0, marks: input.units.lengthMarks };
  switch (place.kind) {
    case 'unrolled': {
      const own = {
        ...window,
        pxPerS: place.pxPerS,
        labelX: place.labelX ?? x0 - 8,
        labelSize: place.labelSize,
        ghosts: place.ghosts,
      };
      return flightScene({
        flight,
        cursor,
        others,
        window: own,
        landingLabel: place.unlabelled ? undefined : input.landing,
        calm: place.calm,
        plumb: place.plumb,
      });
    }
    case 'side':
      return sideScene({
        flight,
        cursor,
        others,
        window: { ...window, ghosts: place.ghosts },
        arrows: true,
      });
    case 'front':
      return frontScene({ flight, cursor, window, others });
    case 'top':
      return topScene({ flight, cursor, window, others });
    case 'large':
      if (!place.large) throw new RangeError('the large stage is drawn by what comes with it');
      return place.large.draw(place, flight, cursor, getStaged(input.result).pose, others, input.units);
    case 'upright':
      return uprightScene({ body: flight.body, pose: cursor, width, height, pxPerM, y: place.centreY, others });
  }
}

/**
 * A flight seen for the first time is drawn without keys: while a hand drags, every picture is new, and keeping it as a
 * texture would cost more than it saves. When only the cursor moves, the keys are back.
 */
function dropKeys(scene: Scene): Scene {
  const loose = (items: readonly DrawItem[]): DrawItem[] =>
    items.map((item) => (item.kind === 'group' ? { ...item, key: undefined } : item));
  return { ...scene, layers: scene.layers.map((layer) => ({ ...layer, key: undefined, items: loose(layer.items) })) };
}

export const stagePictures: StagePictures = {
  async mount(canvas, width, height): Promise<StageHandle> {
    const resolution = Math.min(window.devicePixelRatio || 1, 2);
    const renderer = await createRenderer(canvas, {
      tokens: readTokens(),
      resolution,
      width,
      height,
      prefer: choosePreferred(),
      putText,
    });
    canvas.dataset.renderer = renderer.kind;
    let size = `${width} ${height}`;
    let drawn: FlightResult | undefined;
    let last: { scene: Scene; cursor: StagePose } | undefined;
    /** of what was drawn last, once they are asked for */
    let figures: readonly StageFigure[] | undefined;
    return {
      draw: (input) => {
        const now = `${input.width} ${input.height}`;
        if (now !== size) {
          size = now;
          renderer.resize(input.width, input.height, resolution);
        }
        const { flight, pose } = getStaged(input.result);
        const cursor = pose(input.cursorS);
        const others = getOthers(input);
        const parts = input.views.map((place) => ({
          scene: withPlainBodies(
            drawView(place, input, flight, cursor, others),
            input.extras.plainBodies ?? [],
            cursor.R_WF,
            flight.body.stature,
          ),
          x: place.x,
          y: place.y,
        }));
        const scene = joinScenes(input.width, input.height, parts);
        renderer.draw(input.result === drawn ? scene : dropKeys(scene));
        drawn = input.result;
        last = { scene, cursor };
        figures = undefined;
      },
      figures: () => {
        if (!figures && drawn && last) figures = findFigures(drawn, last.scene, last.cursor.frames);
        return figures ?? [];
      },
      setTheme: () => renderer.setTokens(readTokens()),
      destroy: () => renderer.destroy(),
    };
  },
  poseTile: drawPoseTile,
  held: drawHeld,
  tile: (result, block, width, height) => {
    const span = result.skill.schedule.blocks[block];
    if (!span) return '';
    const { pose, R_BF } = calcHeldPose(result.flight, blockMiddle(result, block));
    return shapeTileSvg(result.flight.body, pose, { width, height, view: heldView(R_BF) });
  },
};

function blockMiddle(result: FlightResult, block: number): number {
  const { from, to } = result.skill.schedule.blocks[block];
  const { outline, flight } = result;
  const at = (time: typeof from): number => resolveTime(time, { apex: outline.apex, touchdown: flight.duration });
  return (at(from) + at(to)) / 2;
}

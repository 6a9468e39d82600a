/** The tools, in the order of their buttons. Each is its own chunk, so that the page starts light. */
import type { ToolName } from '../../../commands/actions.ts';
import { loadPart } from '../../load-part.ts';
import type { Tool, ToolPlace } from '../../tool.ts';

export const tools: readonly Tool[] = [
  {
    name: 'pose',
    place: 'aside',
    load: loadPart(
      () => import('../../../features/pose/pose-tool.tsx'),
      (m) => m.PoseTool,
    ),
  },
  {
    name: 'compare',
    place: 'ground',
    load: loadPart(
      () => import('../../../features/compare/compare-tool.tsx'),
      (m) => m.CompareTool,
    ),
    loadEngine: (load) => load.comparing(),
  },
  {
    name: 'account',
    place: 'ground',
    wantsHeight: true,
    load: loadPart(
      () => import('../../../features/why/account-tool.tsx'),
      (m) => m.AccountTool,
    ),
    loadEngine: (load) => load.accounting(),
  },
  {
    name: 'contact',
    place: 'ground',
    hasPictures: true,
    load: loadPart(
      () => import('../../../features/air/air-tool.tsx'),
      (m) => m.AirTool,
    ),
    loadEngine: (load) => load.contacting(),
  },
  {
    name: 'ask',
    place: 'ground',
    fillsBench: true,
    load: loadPart(
      () => import('../../../features/ask/ask-tool.tsx'),
      (m) => m.AskTool,
    ),
    loadEngine: (load) => load.asking(),
  },
  {
    name: 'estimate',
    place: 'ground',
    wantsHeight: true,
    load: loadPart(
      () => import('../../../features/estimate/estimate-tool.tsx'),
      (m) => m.EstimateTool,
    ),
    loadEngine: (load) => load.estimating(),
  },
  {
    name: 'film',
    place: 'ground',
    fillsAir: true,
    load: loadPart(
      () => import('../../../features/film/film-tool.tsx'),
      (m) => m.FilmTool,
    ),
    loadEngine: (load) => load.filming(),
  },
  {
    name: 'class',
    place: 'room',
    load: loadPart(
      () => import('../../../features/class/class-room.tsx'),
      (m) => m.ClassRoom,
    ),
    loadEngine: (load) => load.classing(),
  },
  {
    name: 'hand',
    place: 'ground',
    fillsBench: true,
    load: loadPart(
      () => import('../../../features/hand/hand-tool.tsx'),
      (m) => m.HandTool,
    ),
    loadEngine: (load) => load.handing(),
  },
];

/** It says its own sentence in the place of the result's. */
export const fillsHead = (tool: Tool | undefined): boolean => tool?.fillsBench === true || tool?.fillsAir === true;
/** It has pictures of its own over the floor. */
export const hasOwnAir = (tool: Tool | undefined): boolean => tool?.hasPictures === true || tool?.fillsAir === true;

export const findTool = (name: ToolName | undefined, place?: ToolPlace): Tool | undefined =>
  tools.find((tool) => tool.name === name && (place === undefined || tool.place === place));

/** The tools, in the order of their buttons. Each is its own chunk, so that the page starts light. */
import type { ToolName } from '../../../commands/actions.ts';
import type { Tool, ToolPlace } from '../../tool.ts';

export const tools: readonly Tool[] = [
  { name: 'pose', place: 'aside', load: () => import('../../../features/pose/pose-tool.tsx').then((m) => m.PoseTool) },
  {
    name: 'compare',
    place: 'ground',
    load: () => import('../../../features/compare/compare-tool.tsx').then((m) => m.CompareTool),
  },
  {
    name: 'account',
    place: 'ground',
    load: () => import('../../../features/why/account-tool.tsx').then((m) => m.AccountTool),
  },
  {
    name: 'contact',
    place: 'whole',
    load: () => import('../../../features/air/contact-tool.tsx').then((m) => m.ContactTool),
  },
  { name: 'ask', place: 'ground', load: () => import('../../../features/ask/ask-tool.tsx').then((m) => m.AskTool) },
  {
    name: 'estimate',
    place: 'ground',
    load: () => import('../../../features/estimate/estimate-tool.tsx').then((m) => m.EstimateTool),
  },
];

export const findTool = (name: ToolName | undefined, place?: ToolPlace): Tool | undefined =>
  tools.find((tool) => tool.name === name && (place === undefined || tool.place === place));

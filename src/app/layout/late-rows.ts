/** Parts of open rows, each loaded with the first of them. */
import type { Component } from 'solid-js';
import { makeLate } from '../late.tsx';
import { loadPart } from '../load-part.ts';

type OpenGround = typeof import('./open-ground.ts');
const late = <P extends object>(pick: (parts: OpenGround) => Component<P>): Component<P> =>
  makeLate(loadPart(() => import('./open-ground.ts'), pick));

export const JointKeys = late((parts) => parts.JointKeys);
export const JointTitles = late((parts) => parts.JointTitles);
export const OpenCut = late((parts) => parts.OpenCut);
export const OpenTitles = late((parts) => parts.OpenTitles);
export const ShapeLinks = late((parts) => parts.ShapeLinks);
export const UnderViews = late((parts) => parts.UnderViews);

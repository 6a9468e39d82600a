/** The start of the page: joins the rooms and mounts the bench. */
import { render } from 'solid-js/web';
import './app.css';
import { athletes, shapes, skills } from '../presets/index.ts';
import { getStorage, makeKeeper } from './document/keep.ts';
import { makeEngine } from './engine/engine.ts';
import { App } from './panels/app.tsx';
import type { BenchPorts } from './panels/ports.ts';
import { stagePorts } from './stage.ts';

/** The skill that the bench opens with. */
const FIRST = 'back-straight-full';

const engine = makeEngine({ athletes, shapes });
const shelf = Object.entries(skills).map(([id, file]) => ({ id, file }));
const ports: BenchPorts = {
  ...engine,
  shapes,
  skills: shelf,
  athletes: Object.entries(athletes).map(([id, athlete]) => ({ id, athlete })),
  keeper: makeKeeper(getStorage('sessionStorage'), getStorage('localStorage'), Date.now),
  first: skills[FIRST] ?? shelf[0].file,
  stage: stagePorts,
};

const root = document.getElementById('root');
if (root) render(() => <App ports={ports} />, root);

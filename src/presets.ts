export { athletes, shapes, skills } from '../presets/index.ts';

// Flies a ready skill with the library and says what came of it: node docs/examples/fly.mjs. A model, not coaching advice.
import {
  buildSkill,
  calcFrames,
  flySkill,
  formatSummary,
  frameTimes,
  launch,
  parseSkill,
  summarize,
} from 'shapeflight';
import { athletes, shapes, skills } from 'shapeflight/presets';

const skill = buildSkill(parseSkill(skills['back-tuck'], { athletes, shapes }));
const flight = flySkill(launch(skill));
const frames = calcFrames(flight, frameTimes(flight.duration, 240));
const summary = summarize(flight, frames, skill.target);
console.log(formatSummary(skill.title, 'flown by the library', summary, ''));

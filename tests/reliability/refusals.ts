/** Every wrong input that is refused in one line, with file, field and what is allowed. */
import { jsonRefusals } from './refusals-json.ts';
import { otherRefusals } from './refusals-other.ts';
import { phaseRefusals } from './refusals-phases.ts';
import { scheduleRefusals } from './refusals-schedule.ts';
import { skillRefusals } from './refusals-skill.ts';

export const refusals = [...jsonRefusals, ...skillRefusals, ...phaseRefusals, ...scheduleRefusals, ...otherRefusals];

/** Densely sampled angles (placeholder until the smoothing spline lands in the next commit). */
import { ScheduleValueError } from './errors.ts';
import type { SampledAngle, SmoothingCriterion } from './schedule.ts';
import type { Span } from './span.ts';

export function smoothSamples(samples: SampledAngle, criterion: SmoothingCriterion, name: string): { spans: Span[]; breaks: number[] } {
  throw new ScheduleValueError(`samples of ${name}`, `${samples.values.length} values, ${criterion.kind}`, 'not yet supported');
}

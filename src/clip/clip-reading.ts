/** Clips for the page: opened, written again, blurred, filmed. What reads files is loaded with the first that is opened. */
import { clipFault } from './clip-fault.ts';
import type { ClipReading } from './clip-source.ts';

export const clipReading: ClipReading = {
  open: () => Promise.reject(clipFault('noBrowser')),
  write: () => Promise.reject(clipFault('noBrowser')),
  drawBlurred: () => undefined,
  film: () => Promise.reject(clipFault('noCamera')),
};

/** Days and hours as the page itself speaks: English, the month by its name, this machine's clock. A browser's own language may count other years. */
const LANGUAGE = 'en-GB';

/** "30 November 2026" */
export const sayDay = (at: Date): string =>
  at.toLocaleDateString(LANGUAGE, { day: 'numeric', month: 'long', year: 'numeric' });

/** "30 Nov, 09:41" */
export const sayMoment = (ms: number): string =>
  new Date(ms).toLocaleString(LANGUAGE, { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' });

/** "Monday 09:41" */
export const sayWeekday = (ms: number): string =>
  new Date(ms).toLocaleString(LANGUAGE, { weekday: 'long', hour: '2-digit', minute: '2-digit' });

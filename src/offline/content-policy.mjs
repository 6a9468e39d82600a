// What the page may load and run. No unsafe-eval: a skill or a sheet is data from anywhere. blob: workers are Pixi's image loaders.
const rules = {
  'default-src': ["'self'"],
  'script-src': ["'self'"],
  'worker-src': ["'self'", 'blob:'],
  'style-src': ["'self'", "'unsafe-inline'"],
  'img-src': ["'self'", 'data:', 'blob:'],
  'media-src': ["'self'", 'data:', 'blob:'],
  'font-src': ["'self'", 'data:'],
  'connect-src': ["'self'", 'data:', 'blob:'],
  'object-src': ["'none'"],
  'base-uri': ["'self'"],
  'form-action': ["'none'"],
};

/** `own`: rules of a page that differ. */
export const writePolicy = (own = {}) =>
  Object.entries({ ...rules, ...own })
    .map(([name, from]) => `${name} ${from.join(' ')}`)
    .join('; ');

/** In the page itself, for hosts that send no headers. */
export const pagePolicy = writePolicy();

/** In the headers; only there a browser obeys frame-ancestors. */
export const contentSecurityPolicy = writePolicy({ 'frame-ancestors': ["'none'"] });

/** Asks the browser to keep the built app for use without a network; after the first picture, and only when built. */
if (import.meta.env.PROD && 'serviceWorker' in navigator) {
  addEventListener('load', () => {
    // a browser that refuses (private window, plain http) costs nothing but the offline use
    navigator.serviceWorker.register('./service-worker.js').catch(() => undefined);
  });
}

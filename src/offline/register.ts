/** Asks the browser to keep the built app for use without a network; after the first picture, and only when built. */
if (import.meta.env.PROD && 'serviceWorker' in navigator) {
  const register = (): void => {
    // a browser that refuses (private window, plain http) costs nothing but the offline use
    navigator.serviceWorker.register('./service-worker.js').catch(() => undefined);
  };
  // the page's first module waits for its database: loading may be over before this is read
  if (document.readyState === 'complete') register();
  else addEventListener('load', register, { once: true });
}

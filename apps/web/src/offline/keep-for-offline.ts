/** Keeps the page itself in the browser, so that a reload works while the server is away. */
export function keepForOffline(): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  // After the page stands: what is kept for later must not slow down what is looked at now.
  const keep = (): void => {
    navigator.serviceWorker.register('/service-worker.js').catch(() => {
      // A browser that forbids it (private windows do) works on with the server alone.
    });
  };
  if (document.readyState === 'complete') keep();
  else window.addEventListener('load', keep);
}

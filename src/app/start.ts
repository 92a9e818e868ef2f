/** Starts the page: the shell defines itself and follows the address. */
import './shell.ts';

// A part that is no longer there belongs to a build that has been replaced: the new one is fetched, once.
const RELOADED = 'winterkeep reloaded';
addEventListener('vite:preloadError', (event) => {
  if (sessionStorage.getItem(RELOADED)) return;
  sessionStorage.setItem(RELOADED, 'yes');
  event.preventDefault();
  location.reload();
});

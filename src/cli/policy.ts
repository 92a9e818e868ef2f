/** What the page may do, as headers: as in `src/app/index.html`, but for workers too, and no other page may frame it. */
export const HEADERS = {
  'Content-Security-Policy':
    "default-src 'none'; script-src 'self'; worker-src 'self' blob:; style-src 'self' 'unsafe-inline'; img-src 'self' data:; connect-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
};

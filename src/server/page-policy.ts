/** Nothing but what Lacbench itself serves may run, load or be asked; photographs not yet sent are blobs. */
export const pagePolicy: readonly string[] = [
  "default-src 'self'",
  "img-src 'self' blob: data:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'self'",
];

/** What a page of a guide may do when it is looked at inside the workbench: be styled, and nothing else. */
export const pagePolicy =
  "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'self'; sandbox allow-same-origin";

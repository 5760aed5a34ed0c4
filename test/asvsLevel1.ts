/**
 * The requirements of level 1 of the OWASP Application Security Verification Standard 5.0.0 (30 May 2025), by number.
 * Source: github.com/OWASP/ASVS, 5.0/docs_en/OWASP_Application_Security_Verification_Standard_5.0.0_en.csv at commit
 * 5cf9b032440be53ce345ab3c130fda46ba1ce7a2, the rows whose last column is 1.
 */
export const asvsLevel1 = `
  1.2.1 1.2.2 1.2.3 1.2.4 1.2.5 1.3.1 1.3.2 1.5.1
  2.1.1 2.2.1 2.2.2 2.3.1
  3.2.1 3.2.2 3.3.1 3.4.1 3.4.2 3.5.1 3.5.2 3.5.3
  4.1.1 4.4.1
  5.2.1 5.2.2 5.3.1 5.3.2
  6.1.1 6.2.1 6.2.2 6.2.3 6.2.4 6.2.5 6.2.6 6.2.7 6.2.8 6.3.1 6.3.2 6.4.1 6.4.2
  7.2.1 7.2.2 7.2.3 7.2.4 7.4.1 7.4.2
  8.1.1 8.2.1 8.2.2 8.3.1
  9.1.1 9.1.2 9.1.3 9.2.1
  10.4.1 10.4.2 10.4.3 10.4.4 10.4.5
  11.3.1 11.3.2 11.4.1
  12.1.1 12.2.1 12.2.2
  13.4.1
  14.2.1 14.3.1
  15.1.1 15.2.1 15.3.1`
  .trim()
  .split(/\s+/)
  .map(number => `V${number}`);

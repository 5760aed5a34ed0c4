/** The release of SR that a folder or a file is named for: "sr28asc", "usda-sr28.csv" are release 28. */
export function releaseIn(names: string): string | undefined {
  const release = /(?:^|[^a-z])sr[-_ ]?(\d{2})(?!\d)/i.exec(names)?.[1];
  return release && `release ${release}`;
}

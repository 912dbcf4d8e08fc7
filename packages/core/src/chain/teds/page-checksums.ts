const pageLength = 32;

/**
 * Of each page of 32 bytes the sum of its bytes mod 256 and their exclusive or. Two public readers want the sum to be 0,
 * one note the exclusive or: they disagree, so both are told and neither is demanded. Nothing for another length.
 */
export function pageChecksums(bytes: readonly number[]): string | undefined {
  if (bytes.length === 0 || bytes.length % pageLength !== 0) return undefined;
  const pages = Array.from({ length: bytes.length / pageLength }, (_, page) => {
    const own = bytes.slice(page * pageLength, (page + 1) * pageLength);
    const sum = own.reduce((total, byte) => total + byte, 0) % 256;
    const exclusive = own.reduce((total, byte) => total ^ byte, 0);
    return `page ${page + 1}: sum ${sum}, exclusive or ${exclusive}`;
  });
  return `${pages.join('; ')} (0 is right by one of the two, which sources dispute; a checksum byte is no part of the data)`;
}

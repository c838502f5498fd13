// The fingerprint of a version: SHA-256 in plain JavaScript, because a page that came over plain HTTP has no crypto.
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { type Plain, canonical } from './canonical.ts';

/** Sixty-four hexadecimal digits over the canonical form. */
export function hashOf(value: Plain): string {
  return bytesToHex(sha256(utf8ToBytes(canonical(value))));
}

/** The start of a hash as it stands on paper: `3f2a 91c0 77de`. */
export function fingerprint(hash: string): string {
  return hash.slice(0, 12).replace(/(.{4})(?=.)/g, '$1 ');
}

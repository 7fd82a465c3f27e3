/**
 * Digests of files and bytes: SHA-256 (NIST FIPS 180-4), the same form everywhere.
 *
 * <p>Worked example: the three bytes {@code abc} have the digest
 * {@code ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad} (FIPS 180-4 examples).
 *
 * <p>For other packages: {@link Sha256}.
 */
@NullMarked
package io.rowledger.digest;

import org.jspecify.annotations.NullMarked;

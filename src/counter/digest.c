/* SPDX-License-Identifier: MIT */
#include "counter/digest.h"

#include <stdint.h>
#include <string.h>

#define BLOCK 64

/* FIPS 180-4, 4.2.2: the first 32 bits of the fractions of the cube roots of the first 64 primes. */
static const uint32_t constants[64] = {
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
    0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
    0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
    0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
    0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
    0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
    0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
    0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
};

static uint32_t turn(uint32_t word, unsigned by)
{
    return (word >> by) | (word << (32 - by));
}

static void prepare(const unsigned char *block, uint32_t *words)
{
    for (size_t t = 0; t < 16; t++)
        words[t] = (uint32_t)block[4 * t] << 24 | (uint32_t)block[4 * t + 1] << 16 |
                   (uint32_t)block[4 * t + 2] << 8 | (uint32_t)block[4 * t + 3];
    for (size_t t = 16; t < 64; t++) {
        uint32_t low = turn(words[t - 15], 7) ^ turn(words[t - 15], 18) ^ (words[t - 15] >> 3);
        uint32_t high = turn(words[t - 2], 17) ^ turn(words[t - 2], 19) ^ (words[t - 2] >> 10);
        words[t] = words[t - 16] + low + words[t - 7] + high;
    }
}

/* FIPS 180-4, 6.2.2, with its names a to h as at[0] to at[7]. */
static void take_block(uint32_t *hash, const unsigned char *block)
{
    uint32_t words[64], at[8];
    prepare(block, words);
    memcpy(at, hash, sizeof at);
    for (size_t t = 0; t < 64; t++) {
        uint32_t high = turn(at[4], 6) ^ turn(at[4], 11) ^ turn(at[4], 25);
        uint32_t choice = (at[4] & at[5]) ^ (~at[4] & at[6]);
        uint32_t first = at[7] + high + choice + constants[t] + words[t];
        uint32_t low = turn(at[0], 2) ^ turn(at[0], 13) ^ turn(at[0], 22);
        uint32_t majority = (at[0] & at[1]) ^ (at[0] & at[2]) ^ (at[1] & at[2]);
        memmove(at + 1, at, 7 * sizeof at[0]);
        at[4] += first;
        at[0] = first + low + majority;
    }
    for (size_t index = 0; index < 8; index++)
        hash[index] += at[index];
}

/* The last block or two: what is left, a one bit, zeros, the length in bits. */
static void take_rest(uint32_t *hash, const char *rest, size_t left, size_t length)
{
    unsigned char blocks[2 * BLOCK] = {0};
    size_t size = left + 9 <= BLOCK ? BLOCK : 2 * BLOCK;
    memcpy(blocks, rest, left);
    blocks[left] = 0x80;
    for (size_t index = 0; index < 8; index++)
        blocks[size - 1 - index] = (unsigned char)((uint64_t)length * 8 >> (8 * index));
    take_block(hash, blocks);
    if (size > BLOCK)
        take_block(hash, blocks + BLOCK);
}

static void write_base64(const unsigned char *bytes, size_t length, char *words)
{
    static const char letters[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    for (size_t index = 0; index < length; index += 3) {
        uint32_t group = (uint32_t)bytes[index] << 16;
        group |= index + 1 < length ? (uint32_t)bytes[index + 1] << 8 : 0;
        group |= index + 2 < length ? bytes[index + 2] : 0;
        *words++ = letters[group >> 18];
        *words++ = letters[group >> 12 & 63];
        *words++ = index + 1 < length ? letters[group >> 6 & 63] : '=';
        *words++ = index + 2 < length ? letters[group & 63] : '=';
    }
    *words = '\0';
}

void counter_digest(const char *bytes, size_t length, char digest[COUNTER_DIGEST_SIZE])
{
    uint32_t hash[8] = {0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a,
                        0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};
    unsigned char out[32];
    size_t whole = length - length % BLOCK;
    for (size_t at = 0; at < whole; at += BLOCK) {
        unsigned char block[BLOCK];
        memcpy(block, bytes + at, BLOCK);
        take_block(hash, block);
    }
    take_rest(hash, bytes + whole, length - whole, length);
    for (size_t index = 0; index < sizeof out; index++)
        out[index] = (unsigned char)(hash[index / 4] >> (24 - 8 * (index % 4)));
    write_base64(out, sizeof out, digest);
}

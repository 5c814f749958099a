import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { canonicalText, type Json } from '@/lib/documents/canonical-text'
import { hashOfText } from '@/lib/documents/hash-of-text'

// Source: A. Rundgren, B. Jordan, S. Erdtman, RFC 8785 "JSON Canonicalization Scheme (JCS)", 2020,
// section 3.2.2 (serialization) and 3.2.3 (sorting of properties); the example of 3.2.2 to 3.2.4. From memory.
describe('RFC 8785', () => {
  it('writes the worked example in its canonical form', () => {
    const input: Json = {
      numbers: [333333333.33333329, 1e30, 4.5, 2e-3, 0.000000000000000000000000001],
      string: '\u20ac$\u000F\u000aA\'\u0042\u0022\u005c\\"\/',
      literals: [null, true, false],
    }
    expect(canonicalText(input)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    )
  })

  it('sorts property names by UTF-16 code units', () => {
    const names = ['\u20ac', '\r', '\ufb33', '1', '\ud83d\ude00', '\u0080', '\u00f6']
    const written = canonicalText(Object.fromEntries(names.map((name) => [name, 0])))
    expect(Object.keys(JSON.parse(written) as object).filter((name) => name !== '1')).toEqual([
      '\r',
      '\u0080',
      '\u00f6',
      '\u20ac',
      '\ud83d\ude00',
      '\ufb33',
    ])
    expect(written.indexOf('"\\r"')).toBeLessThan(written.indexOf('"1"'))
  })
})

// Source: NIST FIPS 180-4 and its example values for SHA-256, "abc". From memory.
describe('FIPS 180-4', () => {
  it('hashes the example message', () => {
    expect(hashOfText('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
    expect(hashOfText('é')).toBe(
      createHash('sha256')
        .update(Buffer.from([0xc3, 0xa9]))
        .digest('hex'),
    )
  })
})

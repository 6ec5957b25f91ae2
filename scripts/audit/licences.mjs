// Whether the licences of a part are among those that we accept, by the meaning of SPDX's expressions.

/** Reads `(MIT OR Apache-2.0) AND BSD-3-Clause`; what is no expression is one name. */
export function parse(text) {
  const tokens = text.match(/\(|\)|[^\s()]+/g) ?? [];
  let at = 0;
  const broken = Symbol('broken');
  const peek = () => tokens[at]?.toUpperCase();
  function one() {
    if (tokens[at] === '(') {
      at++;
      const inner = any();
      if (tokens[at++] !== ')') throw broken;
      return inner;
    }
    const name = tokens[at++];
    if (name === undefined || !/^[A-Za-z0-9.+:-]+$/.test(name)) throw broken;
    if (peek() !== 'WITH') return { name };
    at++;
    return { name: `${name} WITH ${tokens[at++]}` };
  }
  function every() {
    const parts = [one()];
    for (; peek() === 'AND'; parts.push(one())) at++;
    return parts.length === 1 ? parts[0] : { every: parts };
  }
  function any() {
    const parts = [every()];
    for (; peek() === 'OR'; parts.push(every())) at++;
    return parts.length === 1 ? parts[0] : { any: parts };
  }
  try {
    const whole = any();
    return at === tokens.length ? whole : { name: text };
  } catch (e) {
    if (e !== broken) throw e;
    return { name: text };
  }
}

function holds(expression, accepted) {
  if (expression.any) return expression.any.some((e) => holds(e, accepted));
  if (expression.every) return expression.every.every((e) => holds(e, accepted));
  return Object.hasOwn(accepted, expression.name);
}

/**
 * What is wrong with the licences of the parts, in sentences.
 * @param {{ licences: { shipped: object, built: object }, readAs: { part: string, says: string, is: string, why: string }[] }} rules
 */
export function licenceProblems(parts, rules) {
  const wrong = [];
  const used = new Set();
  for (const part of parts) {
    const accepted = part.isShipped ? rules.licences.shipped : { ...rules.licences.shipped, ...rules.licences.built };
    const read = part.licences.map((says) => {
      const rule = rules.readAs.find((r) => r.says === says && (part.purl === r.part || part.purl.startsWith(`${r.part}@`)));
      if (rule) used.add(rule);
      return rule?.is ?? says;
    });
    // Several licences beside each other are a choice: so Maven defines them.
    if (read.some((text) => holds(parse(text), accepted))) continue;
    const named = read.join(' or ') || 'none that is named';
    wrong.push(
      `${part.name} ${part.version} (${part.isShipped ? 'shipped' : 'builds and tests'}): its licence, ${named}, is not one that we accept. ` +
        `Read it at its source; then put the licence under "licences" or what it says under "readAs" in the list, or take another part.`,
    );
  }
  for (const rule of rules.readAs) {
    if (!used.has(rule)) wrong.push(`"readAs" names ${rule.part} with ${rule.says}: no part is so any more. Take the entry out.`);
  }
  return wrong;
}

// The parts that are compiled into the app, as a CycloneDX list. npm's own `--omit dev` leaves out what a tool asks for too, such as the reader of YAML.
// Usage: (cd web && npm sbom --sbom-format cyclonedx --package-lock-only) | node scripts/app-parts.mjs
import { readFileSync } from 'node:fs';

const list = JSON.parse(readFileSync(0, 'utf8'));
const isTool = (part) => (part.properties ?? []).some((p) => p.name === 'cdx:npm:package:development' && p.value === 'true');
const tools = new Set(list.components.filter(isTool).map((p) => p['bom-ref']));
list.components = list.components.filter((p) => !isTool(p));
list.dependencies = list.dependencies
  .filter((d) => !tools.has(d.ref))
  .map((d) => (d.dependsOn ? { ...d, dependsOn: d.dependsOn.filter((ref) => !tools.has(ref)) } : d));
// The same bytes for the same parts.
delete list.serialNumber;
delete list.metadata.timestamp;
console.log(JSON.stringify(list, null, 2));

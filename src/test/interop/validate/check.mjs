// fhir-profiles by libraries that share nothing with HAPI: `fhir` for the structure of R4, `fhirpath` for every invariant,
// `@lhncbc/ucum-lhc` for every unit. Usage: node check.mjs <fhir-profiles> <breaches.psv> <units.json>
import fs from 'node:fs';
import path from 'node:path';
import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);
const { Fhir } = require('fhir');
const fhirpath = require('fhirpath');
const r4 = require('fhirpath/fhir-context/r4');
const ucum = require('@lhncbc/ucum-lhc').UcumLhcUtils.getInstance();

const [profiles, breachesFile, unitsFile] = process.argv.slice(2);
const UCUM = 'http://unitsofmeasure.org';
const counts = {};

function check(kind, name, good, why = '') {
  const count = (counts[kind] ??= { passed: 0, failed: 0 });
  count[good ? 'passed' : 'failed']++;
  if (!good) console.log(`FAILED ${kind}: ${name}${why ? ': ' + why : ''}`);
}

const jsonFiles = (folder) =>
  fs.readdirSync(folder, { recursive: true })
    .filter((file) => file.endsWith('.json'))
    .sort()
    .map((file) => path.join(folder, file));
const read = (file) => JSON.parse(fs.readFileSync(file, 'utf8'));
const named = (folder) => Object.fromEntries(jsonFiles(path.join(profiles, folder)).map((file) => [path.basename(file, '.json'), read(file)]));

const definitions = ['profiles', 'extensions'].flatMap((folder) => Object.values(named(folder)));
const byUrl = Object.fromEntries(definitions.map((each) => [each.url, each]));
const examples = named('examples');

// --- structure -----------------------------------------------------------------------------------------------------

// The library knows no reference with a version ("Invalid type for reference"), which R4 2.3.0.1 allows: they are cut off for it.
const withoutVersions = (resource) => JSON.parse(JSON.stringify(resource).replace(/\/_history\/[A-Za-z0-9.-]{1,64}"/g, '"'));

function structureFaults(resource) {
  return new Fhir().validate(withoutVersions(resource), { errorOnUnexpected: true }).messages
    .filter((message) => message.severity === 'error' || message.severity === 'fatal')
    .map((message) => `${message.location} ${message.message}`);
}

for (const [name, example] of Object.entries(examples)) {
  const faults = structureFaults(example);
  check('structure', name, faults.length === 0, faults.join('; '));
  // What is not in R4 must be seen, or the check sees nothing.
  check('structure refused', name, structureFaults({ ...example, noSuchElement: true }).length > 0);
}

// --- invariants ----------------------------------------------------------------------------------------------------

const EYES = [
  ['1290032005', '1290031003'], ['1290043002', '1290041000'], ['362502000', '362503005'], ['18944008', '8966001'],
  ['24028007', '7771000'], ['64742-0', '66067-0'], ['right eye', 'left eye'],
];
const exchange = Object.fromEntries(EYES.flatMap(([right, left]) => [[right, left], [left, right]]));
const otherEye = (resource) => JSON.parse(JSON.stringify(resource), (_, value) => exchange[value] ?? value);

function constraintsOf(definition) {
  const own = definition.differential.element.flatMap((element) =>
    (element.constraint ?? []).map((constraint) => ({ ...constraint, path: element.path, slice: element.id.includes(':') })));
  const base = byUrl[definition.baseDefinition];
  return base ? own.concat(constraintsOf(base)) : own;
}

/** The places of the resource that an invariant is about: extensions by their address, elements by their path. */
function places(resource, definition, constraint) {
  if (definition.type === 'Extension') {
    return fhirpath.evaluate(resource, `descendants().where(url = '${definition.url}')`, {}, r4);
  }
  const steps = constraint.path.split('.').slice(1).map((step) => step.replace('[x]', ''));
  return steps.length === 0 ? [resource] : fhirpath.evaluate(resource, steps.join('.'), {}, r4);
}

function holds(resource, definition, constraint) {
  const base = definition.type === 'Extension' ? 'Extension' : constraint.path.replace('[x]', '');
  const root = definition.type !== 'Extension' && !constraint.path.includes('.');
  return places(resource, definition, constraint).every((place) => {
    const answer = fhirpath.evaluate(place, root ? constraint.expression : { base, expression: constraint.expression }, { resource }, r4);
    return answer.length === 1 && answer[0] === true;
  });
}

/** What applies to a resource: its declared profile with its base, and every extension of ours. */
function applying(resource) {
  const profile = byUrl[resource.meta?.profile?.[0]];
  const extensions = definitions.filter((each) => each.type === 'Extension');
  return [...(profile ? [profile] : []), ...extensions].flatMap((definition) =>
    constraintsOf(definition).map((constraint) => ({ definition, constraint })));
}

const keys = new Set(definitions.flatMap((each) => constraintsOf(each).map((constraint) => constraint.key)));
const sliced = definitions.flatMap(constraintsOf).filter((constraint) => constraint.slice).map((constraint) => constraint.key);
check('invariants', 'none stands in a slice, which this check could not find', sliced.length === 0, sliced.join(', '));

const kept = new Set();
for (const [name, example] of Object.entries(examples)) {
  for (const [eye, resource] of [['as it is', example], ['the other eye', otherEye(example)]]) {
    for (const { definition, constraint } of applying(resource)) {
      check('invariants kept', `${name} (${eye}) ${constraint.key}`, holds(resource, definition, constraint));
      kept.add(constraint.key);
    }
  }
}
for (const key of keys) check('invariants', `${key} is kept by an example`, kept.has(key));

function commit(example, pointer, value) {
  const broken = structuredClone(example);
  const steps = pointer.split('/').slice(1);
  const last = steps.pop();
  const parent = steps.reduce((node, step) => node[step], broken);
  if (Array.isArray(parent)) {
    if (last === '-') parent.push(JSON.parse(value));
    else if (value === '') parent.splice(Number(last), 1);
    else parent[Number(last)] = JSON.parse(value);
  } else if (value === '') delete parent[last];
  else parent[last] = JSON.parse(value);
  return broken;
}

const breaches = fs.readFileSync(breachesFile, 'utf8').split('\n')
  .filter((line) => line && !line.startsWith('#'))
  .map((line) => { const [name, refusal, pointer, ...value] = line.split('|'); return [name, refusal, pointer, value.join('|')].map((cell) => cell.trim()); });
const broken = new Set();
for (const [name, key, pointer, value] of breaches) {
  if (!keys.has(key)) continue;
  const wrong = commit(examples[name], pointer, value);
  for (const [eye, resource] of [['as it is', wrong], ['the other eye', otherEye(wrong)]]) {
    const refused = applying(resource).some(({ definition, constraint }) => constraint.key === key && !holds(resource, definition, constraint));
    check('invariants broken', `${name} (${eye}) ${pointer} ${key}`, refused);
    broken.add(key);
  }
}
for (const key of keys) check('invariants', `${key} is broken by a breach`, broken.has(key));

// --- units ---------------------------------------------------------------------------------------------------------

const units = new Set(read(unitsFile));
function collect(node) {
  if (Array.isArray(node)) node.forEach(collect);
  else if (node && typeof node === 'object') {
    if (node.system === UCUM && node.code) units.add(node.code);
    Object.values(node).forEach(collect);
  }
}
jsonFiles(profiles).forEach((file) => collect(read(file)));
for (const unit of units) check('units', unit, ucum.validateUnitString(unit).status === 'valid');
// Spellings seen in the wild that we read with a note: not UCUM, or the note would be wrong.
for (const unit of ['D', 'dpt', 'diopter', 'millimetre', 'mmHg']) {
  check('units refused', unit, ucum.validateUnitString(unit).status !== 'valid');
}

// --- the account ---------------------------------------------------------------------------------------------------

const total = { passed: 0, failed: 0 };
for (const [kind, { passed, failed }] of Object.entries(counts)) {
  console.log(`${kind}: ${passed} passed, ${failed} failed`);
  total.passed += passed;
  total.failed += failed;
}
console.log(`${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed === 0 ? 0 : 1;

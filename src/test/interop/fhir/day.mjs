// Goes through a theatre day with a FHIR client that is not ours: what a plan says, $plan, $verify-lens from pick to sign-out, a measurement
// that changes. Prints one line of JSON for each step. Usage: node day.mjs RECORD ADAPTER, both base addresses without a slash at the end.
import { Client } from "fhir-kit-client";

const [recordUrl, adapterUrl] = process.argv.slice(2);
const record = new Client({ baseUrl: recordUrl });
const ours = new Client({ baseUrl: `${adapterUrl}/fhir` });
const PLAN = "https://lensward.org/fhir/sid/eye-plan";
const extension = (resource, name) =>
  resource.extension?.find((each) => each.url === `https://lensward.org/fhir/StructureDefinition/${name}`);
const say = (step, facts) => console.log(JSON.stringify({ step, ...facts }));
const entries = (bundle) => (bundle.entry ?? []).map((each) => each.resource);
const fingerprint = (plan) => extension(plan, "plan-fingerprint").valueString;

const search = async (resourceType, searchParams) => entries(await record.resourceSearch({ resourceType, searchParams }));
const plan = (booking) => record.read({ resourceType: "Procedure", id: `plan-${booking}` });
const kit = (booking) => search("DeviceRequest", { identifier: `${PLAN}|${booking}`, status: "active" });
const check = async (booking) =>
  (await search("Task", { identifier: `${PLAN}|${booking}` })).find((task) => task.status !== "cancelled");
const parameter = (lens, code) => lens.parameter.find((each) => each.code.coding.some((coding) => coding.code === code));
const modelOf = (lens) => extension(lens, "lens-model").valueReference.reference;
const powerOf = (lens) => parameter(lens, "lens-power").valueQuantity;
const roleOf = (lens) => parameter(lens, "kit-role").valueCodeableConcept.coding[0].code;

const askPlan = (booking) =>
  ours.operation({
    name: "$plan",
    method: "POST",
    input: { resourceType: "Parameters", parameter: [{ name: "booking", valueReference: { reference: `ServiceRequest/${booking}` } }] },
  });

async function post(path, body) {
  const answer = await fetch(adapterUrl + path, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(body),
  });
  return { status: answer.status, body: await answer.json() };
}

// --- what there is -------------------------------------------------------------------------------------------------

const [theirs, served] = [await record.capabilityStatement(), await ours.capabilityStatement()];
say("metadata", { record: theirs.fhirVersion, operations: served.rest[0].operation.map((each) => each.name).sort() });

const bookings = await search("ServiceRequest", { status: "active", _count: "100" });
const booking = bookings.find((each) => each.id === "booking-01");
const first = await plan("booking-01");
const lenses = await kit("booking-01");
const opened = await check("booking-01");
say("plan", {
  bookings: bookings.length,
  status: first.status,
  state: extension(first, "plan-state").valueCode,
  basedOn: first.basedOn[0].reference,
  roles: lenses.map(roleOf).sort(),
  check: opened.businessStatus.coding[0].code,
  focus: opened.focus.reference,
});
say("plan again", { entries: (await askPlan("booking-01")).entry?.length ?? 0 });

// --- the lens check ------------------------------------------------------------------------------------------------

const devices = (await search("Device", { _count: "500" })).filter((each) => extension(each, "unit-state")?.valueCode === "available");
const day = "2026-12-10";
const carton = (lens) =>
  devices
    .filter((each) => each.definition.reference === modelOf(lens) && each.property[0].valueQuantity[0].value === powerOf(lens).value)
    .filter((each) => each.expirationDate > day && each.location.reference === "Location/lens-store")
    .sort((one, other) => one.expirationDate.localeCompare(other.expirationDate))[0];
// A GS1 element string as a scanner sends it, with its symbology prefix and separator.
const scan = (unit) =>
  `]d201${unit.udiCarrier[0].deviceIdentifier}17${unit.expirationDate.slice(2, 10).replaceAll("-", "")}10${unit.lotNumber}\u001d21${unit.serialNumber}`;

const patient = await record.resolve({ reference: `${recordUrl}/${booking.subject.reference}` });
const eye = { coding: [{ system: "http://snomed.info/sct", code: "1290032005" }] };
const lensParts = (lens) => [
  { name: "model", valueReference: { reference: modelOf(lens) } },
  { name: "power", valueQuantity: { value: powerOf(lens).value, unit: "D", system: "http://unitsofmeasure.org", code: "[diop]" } },
];
const primary = lenses.find((each) => roleOf(each) === "primary");

function presented(checkpoint, unit, eyeOfMark = eye) {
  const state = checkpoint === "sign-out" ? "opened" : "intact";
  return {
    resourceType: "Parameters",
    parameter: [
      { name: "booking", valueReference: { reference: "ServiceRequest/booking-01" } },
      { name: "checkpoint", valueCode: checkpoint },
      { name: "scan", valueString: scan(unit) },
      ...patient.identifier.map((each) => ({ name: "patient-identifier", valueIdentifier: { system: each.system, value: each.value } })),
      { name: "birth-date", valueDate: patient.birthDate },
      ...["booking", "sheet", "biometry", "mark"].map((source) => ({
        name: "eye",
        part: [{ name: "source", valueCode: source }, { name: "value", valueCodeableConcept: source === "mark" ? eyeOfMark : eye }],
      })),
      { name: "fingerprint", valueString: fingerprint(first) },
      { name: "box", part: [...lensParts(primary), { name: "reader", valueString: "Nurse Wold" }] },
      { name: "package", valueCode: state },
      { name: "no-allergy", valueBoolean: true },
      ...lenses.filter((each) => roleOf(each) !== "primary").map((lens) => ({
        name: "back-up",
        part: [{ name: "role", valueCode: roleOf(lens) }, ...lensParts(lens)],
      })),
      { name: "reader", valueString: "Nurse Lark" },
      { name: "second", valueString: "Nurse Wold" },
      { name: "at", valueDateTime: "2026-12-10T08:20:00Z" },
      { name: "implanted", part: [{ name: "surgeon", valueString: "Ms Vale" }, { name: "hospital", valueString: "Organization/harbour-eye-unit" }] },
    ],
  };
}

const valueOf = (parameter) => Object.entries(parameter ?? {}).find(([key]) => key.startsWith("value"))?.[1];
function verdict(answer) {
  const get = (name) => answer.parameter.find((each) => each.name === name);
  return {
    result: valueOf(get("result")),
    state: valueOf(get("state")),
    written: valueOf(get("written")),
    codes: answer.parameter
      .filter((each) => each.name === "difference")
      .map((each) => valueOf(each.part.find((part) => part.name === "code")).code),
    carton: valueOf(get("carton")?.part.find((part) => part.name === "state")),
    serial: valueOf(get("implant-card")?.part.find((part) => part.name === "serial")),
  };
}
const verify = async (input) => verdict(await ours.operation({ name: "$verify-lens", method: "POST", input }));

const unit = carton(primary);
say("too early", await verify(presented("pick", unit)));
say("confirmed", { status: (await post("/api/plans/booking-01/confirmation", { surgeon: "Ms Vale" })).status });
for (const checkpoint of ["pick", "pick", "sign-in", "time-out", "before-opening", "sign-out"]) {
  say(checkpoint, await verify(presented(checkpoint, unit)));
}
say("implanted", { serial: unit.serialNumber, plan: (await plan("booking-01")).status });
try {
  await ours.operation({ name: "$verify-lens", method: "POST", input: { resourceType: "Parameters", parameter: [] } });
} catch (refused) {
  say("refused", { status: refused.response.status, type: refused.response.data.resourceType });
}

// --- a measurement changes -----------------------------------------------------------------------------------------

const before = await plan("booking-05");
const oldCheck = await check("booking-05");
say("second confirmed", { status: (await post("/api/plans/booking-05/confirmation", { surgeon: "Ms Vale" })).status });
const predictions = await search("Observation", { identifier: `${PLAN}|booking-05` });
const measured = await Promise.all(
  predictions[0].derivedFrom.map((each) => record.read({ resourceType: "Observation", id: each.reference.split("/")[1] })),
);
// The axial length, by itself or among the components of a panel: the only length that long.
const isLength = (each) => each.valueQuantity?.code === "mm" && each.valueQuantity.value > 18;
const length = measured.find((each) => isLength(each) || each.component?.some(isLength));
const quantity = [length, ...(length.component ?? [])].find(isLength).valueQuantity;
quantity.value = Number((quantity.value + 0.3).toFixed(2));
await record.update({ resourceType: "Observation", id: length.id, body: length });
let after = before;
for (let tries = 0; tries < 900 && fingerprint(after) === fingerprint(before); tries++) {
  await new Promise((resolve) => setTimeout(resolve, 200));
  after = await plan("booking-05");
}
const voided = await record.read({ resourceType: "Task", id: oldCheck.id });
say("changed", {
  replaced: fingerprint(after) !== fingerprint(before),
  voided: voided.status,
  state: voided.businessStatus.coding[0].code,
  next: (await check("booking-05"))?.businessStatus.coding[0].code,
});

// --- a CDS Hook ----------------------------------------------------------------------------------------------------

const hook = await post("/cds-services/patient-view", {
  hook: "patient-view",
  hookInstance: "d1577c69-dfbe-44ad-ba6d-3e05e953b2ea",
  fhirServer: recordUrl,
  context: { userId: "Practitioner/surgeon", patientId: "patient-06" },
});
say("cards", { status: hook.status, indicators: hook.body.cards.map((card) => card.indicator) });
const feedback = await fetch(`${adapterUrl}/cds-services/patient-view/feedback`, {
  method: "POST",
  headers: { "Content-Type": "application/json" },
  body: JSON.stringify({
    feedback: [{
      card: hook.body.cards[0].uuid,
      outcome: "overridden",
      outcomeTimestamp: "2026-12-10T07:50:00Z",
      overrideReason: { reason: { code: "seen", system: "https://south.example/reasons" } },
    }],
  }),
});
say("feedback", { status: feedback.status });

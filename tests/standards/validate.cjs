// SPDX-License-Identifier: MIT
// Usage: node validate.cjs FOLDER. Validates fhir-*.json and packet-*.json, after showing that the
// validators see planted faults.
const fs = require('fs');
const path = require('path');
const modules = path.join(__dirname, '..', 'npm', 'node_modules');
const { Fhir } = require(path.join(modules, 'fhir'));
const Ajv = require(path.join(modules, 'ajv')).default;

const fhir = new Fhir();
const schema = JSON.parse(fs.readFileSync(path.join(__dirname, 'phenopacket.schema.json')));
const packet = new Ajv({ allErrors: true, strict: true }).compile(schema);

function fhirErrors(resource) {
    const { messages } = fhir.validate(resource, { errorOnUnexpected: true });
    return messages.filter(m => m.severity === 'error' || m.severity === 'fatal')
        .map(m => `${m.location}: ${m.message}`);
}

function packetErrors(document) {
    return packet(document) ? [] : packet.errors.map(e => `${e.instancePath}: ${e.message}`);
}

function errors(name, document) {
    return name.startsWith('fhir-') ? fhirErrors(document) : packetErrors(document);
}

// A validator that passes everything proves nothing.
const copy = document => JSON.parse(JSON.stringify(document));
function planted(name, document) {
    const request = document.entry
        ? document.entry.map(e => e.resource).find(r => r.resourceType === 'ServiceRequest') : null;
    const faults = name.startsWith('packet-')
        ? [d => delete d.id, d => { d.subject.sex = 'female'; }, d => { d.diagnosis = 'x'; }]
        : request ? [r => delete r.subject, r => { r.status = 'drafted'; }, r => { r.intent = 'wish'; },
            r => { r.urgency = 'now'; }, r => { r.note = 'text'; }] : [];
    return faults.map(fault => {
        const spoiled = copy(request || document);
        fault(spoiled);
        return errors(name, spoiled).length > 0;
    });
}

const folder = process.argv[2];
const names = fs.readdirSync(folder).filter(name => name.endsWith('.json')).sort();
let valid = 0;
let seen = 0;
let missed = 0;
for (const name of names) {
    const document = JSON.parse(fs.readFileSync(path.join(folder, name)));
    const found = errors(name, document);
    found.forEach(message => console.log(`${name}: ${message}`));
    valid += found.length === 0 ? 1 : 0;
    for (const caught of planted(name, document)) {
        seen += caught ? 1 : 0;
        missed += caught ? 0 : 1;
    }
}
console.log(`${valid} documents valid; ${seen} planted faults seen, ${missed} missed`);
process.exit(valid === names.length && seen > 0 && missed === 0 ? 0 : 1);

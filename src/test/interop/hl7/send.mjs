// Sends messages to a running adapter with an HL7 client that is not ours, and prints one line for each answer.
// usage: node send.mjs PORT < messages, one JSON string a line
import { createInterface } from "node:readline";
import { Client, Message } from "node-hl7-client";

const client = new Client({ host: "127.0.0.1" });
let answered;
const connection = client.createConnection({ port: Number(process.argv[2]) }, async (response) => {
  const answer = response.getMessage();
  console.log(JSON.stringify({
    code: answer.get("MSA.1").toString(),
    control: answer.get("MSA.2").toString(),
    type: answer.get("MSH.9.1").toString(),
    version: answer.get("MSH.12").toString(),
  }));
  answered();
});
connection.on("client.error", (failure) => {
  console.error(failure);
  process.exit(1);
});

for await (const line of createInterface({ input: process.stdin })) {
  const next = new Promise((resolve) => (answered = resolve));
  await connection.sendMessage(new Message({ text: JSON.parse(line) }));
  await next;
}
await connection.close();
process.exit(0);

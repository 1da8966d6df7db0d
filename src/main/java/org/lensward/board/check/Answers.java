package org.lensward.board.check;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.board.api.ChecksApi.Step;
import org.lensward.board.step.Implanted;
import org.lensward.check.BackUp;
import org.lensward.check.Checkpoint;
import org.lensward.check.Expected;
import org.lensward.check.Identity;
import org.springframework.util.MultiValueMap;

/**
 * What was answered on the page, as a call would present it. A field that was not answered is not stated, and what is not stated differs.
 *
 * @param given by the questions' ids
 * @param expected the check it is for
 * @param reader who has signed in
 */
record Answers(MultiValueMap<String, String> given, Expected expected, String reader) {

    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    Step step(Checkpoint at, String hospital) {
        Optional<Implanted> implanted = at == Checkpoint.SIGN_OUT
                ? Optional.of(new Implanted(one("surgeon").orElse("not stated"), hospital))
                : Optional.empty();
        return new Step(scans(), presented(), implanted);
    }

    List<String> scans() {
        return Optional.ofNullable(given.get("scan")).orElse(List.of()).stream()
                .filter(each -> !each.isBlank())
                .toList();
    }

    private ObjectNode presented() {
        ObjectNode presented = JSON.objectNode();
        patient(presented.putObject("patient"));
        ObjectNode eyes = presented.putObject("eyes");
        Stream.of("booking", "sheet", "biometry", "mark")
                .forEach(place -> one("eye-" + place).ifPresent(side -> eyes.put(place, side)));
        one("plan")
                .ifPresent(
                        code -> presented.put("plan", code.replaceAll("\\s", "").toLowerCase(java.util.Locale.ROOT)));
        one("axis").ifPresent(axis -> presented.put("axis", number(axis) + " deg"));
        carton(presented.putObject("carton"));
        presented.putArray("allergies").addAll(texts("allergies"));
        expected.backUps().stream()
                .filter(each -> all("back-ups").anyMatch(each.role().code()::equals))
                .forEach(each -> presented.withArray("back-ups").add(backUp(each)));
        ObjectNode people = presented.putObject("people").put("reader", reader);
        one("second").ifPresent(second -> people.put("second", second));
        return presented;
    }

    private void patient(ObjectNode patient) {
        int index = 0;
        for (Identity.Number asked : Questions.numbers(expected)) {
            one("number-" + index++).ifPresent(value -> patient.withArray("numbers")
                    .addObject()
                    .put("system", asked.system())
                    .put("value", value));
        }
        one("born").ifPresent(born -> patient.put("birth-date", date(born)));
    }

    private void carton(ObjectNode carton) {
        one("package").ifPresent(state -> carton.put("state", state));
        if (one("model").isPresent() && one("power").isPresent()) {
            ObjectNode read = carton.putObject("read");
            ObjectNode lens = read.putObject("lens")
                    .put("model", one("model").orElseThrow())
                    .put("power", number(one("power").orElseThrow()) + " D");
            one("cylinder").ifPresent(cylinder -> lens.put("cylinder", number(cylinder) + " D"));
            one("second").ifPresent(second -> read.put("reader", second));
        }
    }

    private static ObjectNode backUp(BackUp stands) {
        ObjectNode backUp = JSON.objectNode().put("role", stands.role().code());
        ObjectNode lens = backUp.putObject("lens")
                .put("model", stands.lens().model())
                .put("power", stands.lens().power().toString());
        stands.lens().cylinder().ifPresent(cylinder -> lens.put("cylinder", cylinder.toString()));
        return backUp;
    }

    /** As a keypad gives it: a sign, a comma for a point, a unit too many. */
    private static String number(String typed) {
        return typed.replace(',', '.')
                .replace('\u2212', '-')
                .replaceAll("[^0-9.+-]", "")
                .replaceFirst("^\\+", "");
    }

    /** Eight digits, day first, become a date; anything else is left to be refused by name. */
    static String date(String typed) {
        String digits = typed.replaceAll("[^0-9]", "");
        boolean dayFirst = digits.length() == 8 && !typed.matches("\\d{4}-\\d\\d-\\d\\d");
        return dayFirst ? digits.substring(4) + "-" + digits.substring(2, 4) + "-" + digits.substring(0, 2) : typed;
    }

    private Optional<String> one(String id) {
        return all(id).findFirst();
    }

    private Stream<String> all(String id) {
        return Optional.ofNullable(given.get(id)).orElse(List.of()).stream()
                .map(String::strip)
                .filter(each -> !each.isEmpty());
    }

    private List<com.fasterxml.jackson.databind.node.TextNode> texts(String id) {
        return all(id).map(JSON::textNode).toList();
    }

    @Override
    public String toString() {
        return "Answers";
    }
}

package org.lensward.board.cds;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.util.Set;
import java.util.UUID;

/** The rules of CDS Hooks 2.0 (cds-hooks.hl7.org/2.0): "Card attributes", "Source", "Discovery", "Null and empty JSON elements". */
final class CdsRules {

    private static final Set<String> CARD = Set.of(
            "uuid",
            "summary",
            "detail",
            "indicator",
            "source",
            "suggestions",
            "selectionBehavior",
            "overrideReasons",
            "links");
    private static final Set<String> SERVICE = Set.of("hook", "title", "description", "id", "prefetch");

    private CdsRules() {}

    static void isAnswer(HttpResponse<String> answer) {
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        assertThat(answer.headers().firstValue("Content-Type"))
                .hasValueSatisfying(type -> assertThat(type).startsWith("application/json"));
        JsonNode cards = Hooks.tree(answer.body()).path("cards");
        assertThat(cards.isArray()).isTrue();
        cards.forEach(CdsRules::isCard);
    }

    private static void isCard(JsonNode card) {
        assertThat(card.fieldNames()).toIterable().isSubsetOf(CARD);
        assertThat(card.path("summary").asText()).isNotBlank().hasSizeLessThan(140);
        assertThat(card.path("indicator").asText()).isIn("info", "warning", "critical");
        assertThat(card.path("source").path("label").asText()).isNotBlank();
        assertThat(UUID.fromString(card.path("uuid").asText())).isNotNull();
        assertThat(card.has("suggestions")).isEqualTo(card.has("selectionBehavior"));
        holdsNothingEmpty(card);
    }

    static void isService(JsonNode service) {
        assertThat(service.fieldNames()).toIterable().isSubsetOf(SERVICE);
        assertThat(service.path("hook").asText()).isNotBlank();
        assertThat(service.path("description").asText()).isNotBlank();
        assertThat(service.path("id").asText()).isNotBlank();
        holdsNothingEmpty(service);
        // "Prefetch tokens": only root-level fields of the context; patientId is one in all three hooks.
        service.path("prefetch")
                .forEach(template -> assertThat(template.asText().replace("{{context.patientId}}", ""))
                        .doesNotContain("{", "}"));
    }

    private static void holdsNothingEmpty(JsonNode node) {
        assertThat(node.isNull()).isFalse();
        assertThat(node.isContainerNode() ? node.size() : node.asText().length())
                .as("%s", node)
                .isPositive();
        node.forEach(CdsRules::holdsNothingEmpty);
    }
}

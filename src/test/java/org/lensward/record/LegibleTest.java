package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** Unicode's chart "Control Pictures": U+241D is the symbol for group separator. XML 1.0, 2.2: the characters it can carry. */
class LegibleTest {

    @Test
    void a_group_separator_is_written_as_its_picture() {
        assertThat(Legible.text("]d20109521234000013\u001d2170107")).isEqualTo("]d20109521234000013\u241d2170107");
        assertThat(Legible.text("two\r\n\tlines")).isEqualTo("two\r\n\tlines");
    }

    @Property
    void no_length_changes_and_nothing_is_left_that_xml_cannot_carry(@ForAll String text) {
        String legible = Legible.text(text);
        assertThat(legible).hasSameSizeAs(text);
        assertThat(legible.chars()).allMatch(each -> each >= ' ' || each == '\t' || each == '\n' || each == '\r');
    }
}

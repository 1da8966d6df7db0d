package org.lensward.lens.label;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.MultiFormatReader;
import com.google.zxing.NotFoundException;
import com.google.zxing.Result;
import com.google.zxing.ResultMetadataType;
import com.google.zxing.client.j2se.BufferedImageLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.time.LocalDate;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.lensward.finding.FindingCode;
import uk.org.okapibarcode.backend.Code128;
import uk.org.okapibarcode.backend.Code3Of9;
import uk.org.okapibarcode.backend.DataMatrix;
import uk.org.okapibarcode.backend.HumanReadableLocation;
import uk.org.okapibarcode.backend.QrCode;
import uk.org.okapibarcode.backend.Symbol;
import uk.org.okapibarcode.graphics.Color;
import uk.org.okapibarcode.output.Java2DRenderer;

/** Labels drawn by OkapiBarcode and decoded by ZXing, neither of them ours: what a camera sends is what the reader reads. */
class LabelImagesTest {

    /** The identifiers of GS1's figure 2.6.14-3 with a lot before a serial, so that a separator stands between. */
    private static final String GS1 = "[01]09501101530003[17]281130[10]AB-123[21]S7";

    private static final int MARGIN = 40;
    private static final int MODULE = 3;

    static Stream<Arguments> gs1Symbols() {
        return Stream.of(
                Arguments.of("]d2", (Supplier<Symbol>) DataMatrix::new),
                Arguments.of("]C1", (Supplier<Symbol>) Code128::new),
                Arguments.of("]Q3", (Supplier<Symbol>) QrCode::new));
    }

    @ParameterizedTest
    @MethodSource("gs1Symbols")
    void gs1_symbols_are_read(String identifier, Supplier<Symbol> symbol) throws NotFoundException {
        Result decoded = decoded(drawn(symbol.get(), Symbol.DataType.GS1, GS1));
        assertThat(symbology(decoded)).isEqualTo(identifier);
        CartonLabel label = Labels.label(decoded.getText());
        assertThat(label.device()).isEqualTo("09501101530003");
        assertThat(label.lot()).contains("AB-123");
        assertThat(label.serial()).contains("S7");
        assertThat(label.expiry()).contains(LocalDate.of(2028, 11, 30));
    }

    @Test
    void two_linear_barcodes_of_one_carton_are_read() throws NotFoundException {
        String device = decoded(drawn(new Code128(), Symbol.DataType.GS1, "[01]09501101530003"))
                .getText();
        String rest = decoded(drawn(new Code128(), Symbol.DataType.GS1, "[17]281130[10]AB-123[21]S7"))
                .getText();
        assertThat(Labels.label(rest, device).serial()).contains("S7");
    }

    static Stream<Arguments> hibcSymbols() {
        return Stream.of(
                Arguments.of("]d1", (Supplier<Symbol>) DataMatrix::new),
                Arguments.of("]C0", (Supplier<Symbol>) Code128::new),
                Arguments.of("]A0", (Supplier<Symbol>) Code3Of9::new));
    }

    /** The library adds flag and check character of its own reckoning. */
    @ParameterizedTest
    @MethodSource("hibcSymbols")
    void hibc_symbols_are_read(String identifier, Supplier<Symbol> symbol) throws NotFoundException {
        Result decoded =
                decoded(drawn(symbol.get(), Symbol.DataType.HIBC, "A99912345/$$52800510X3/16D20251212/S77DEFG45"));
        assertThat(symbology(decoded)).isEqualTo(identifier);
        for (String scan : new String[] {decoded.getText(), identifier + decoded.getText()}) {
            CartonLabel label = Labels.label(scan);
            assertThat(label.issuer()).isEqualTo(Issuer.HIBC);
            assertThat(label.device()).isEqualTo("A99912345");
            assertThat(label.lot()).contains("10X3");
            assertThat(label.serial()).contains("77DEFG45");
            assertThat(label.expiry()).contains(LocalDate.of(2028, 1, 5));
        }
    }

    @Test
    void hibc_primary_and_secondary_are_read() throws NotFoundException {
        String primary = decoded(drawn(new Code3Of9(), Symbol.DataType.HIBC, "A123BJC5D6E71"))
                .getText();
        String secondary = decoded(drawn(new Code128(), Symbol.DataType.HIBC, "$$52801510X3G"))
                .getText();
        assertThat(Labels.label(primary, secondary).lot()).contains("10X3");
    }

    @Test
    void a_plain_datamatrix_with_the_same_digits_is_not_gs1() throws NotFoundException {
        Result decoded = decoded(drawn(new DataMatrix(), Symbol.DataType.ECI, "0109501101530003"));
        assertThat(Labels.refusals(symbology(decoded) + decoded.getText()))
                .containsExactly(FindingCode.LABEL_NOT_RECOGNISED);
    }

    private static String symbology(Result decoded) {
        return String.valueOf(decoded.getResultMetadata().get(ResultMetadataType.SYMBOLOGY_IDENTIFIER));
    }

    private static BufferedImage drawn(Symbol symbol, Symbol.DataType type, String content) {
        symbol.setDataType(type);
        symbol.setHumanReadableLocation(HumanReadableLocation.NONE);
        symbol.setContent(content);
        int width = symbol.getWidth() * MODULE + 2 * MARGIN;
        int height = symbol.getHeight() * MODULE + 2 * MARGIN;
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D paper = image.createGraphics();
        paper.setPaint(java.awt.Color.WHITE);
        paper.fillRect(0, 0, width, height);
        paper.translate(MARGIN, MARGIN);
        new Java2DRenderer(paper, MODULE, Color.WHITE, Color.BLACK).render(symbol);
        return image;
    }

    /** A decoder must be told to expect GS1 in Code 128, or it drops the separators. */
    private static Result decoded(BufferedImage image) throws NotFoundException {
        BinaryBitmap bitmap = new BinaryBitmap(new HybridBinarizer(new BufferedImageLuminanceSource(image)));
        return new MultiFormatReader()
                .decode(bitmap, Map.of(DecodeHintType.ASSUME_GS1, true, DecodeHintType.TRY_HARDER, true));
    }
}

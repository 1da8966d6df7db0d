package org.lensward.bench;

import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.lensward.board.BoardConfiguration;
import org.lensward.board.access.DemoAccess;
import org.lensward.board.day.DaySettings;
import org.lensward.board.day.DaySnapshot;
import org.lensward.board.day.DayView;
import org.lensward.board.day.EyeLine;
import org.lensward.board.day.PredictionBar;
import org.lensward.board.day.StockWord;
import org.lensward.check.CheckState;
import org.lensward.flow.Adapter;
import org.lensward.quantity.Dioptres;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Primary;

/** Times the Day page with 200 eyes over HTTP, sign-in and template and all; prints best, median and worst, and the news that there is none. */
public final class DayTiming {

    private static final LocalDate DAY = LocalDate.of(2026, 12, 10);
    private static final int EYES = 200;
    private static final String PASSWORD = "timing";

    private DayTiming() {}

    /** A day of its own in place of the record's. */
    @Configuration(proxyBeanMethods = false)
    public static class OwnLists {

        @Bean
        @Primary
        DayView ownLists(DaySettings settings, Clock clock) {
            return new DayView(
                    new DayView.Reading() {
                        @Override
                        public DaySnapshot lists(Map<String, StockWord> stock) {
                            return DaySnapshot.of(
                                    clock.instant(),
                                    IntStream.range(0, EYES)
                                            .mapToObj(DayTiming::eye)
                                            .toList(),
                                    stock);
                        }

                        @Override
                        public Map<String, StockWord> stock(LocalDate from, LocalDate to) {
                            return Map.of("b-1", new StockWord("short", "short: spare"));
                        }
                    },
                    settings,
                    clock);
        }
    }

    private static EyeLine eye(int number) {
        return new EyeLine(
                "b-" + number,
                DAY,
                String.format(Locale.ROOT, "%02d:%02d", 8 + number % 10, number % 6 * 10),
                "Theatre " + (1 + number / 20),
                new EyeLine.Person("Family" + number + ", Given", "N" + number, "1950-01-01"),
                number % 2 == 0 ? "right eye" : "left eye",
                "consultant",
                List.of("ready", "provisional", "withheld").get(number % 3),
                number % 3 == 2
                        ? Optional.empty()
                        : Optional.of(new EyeLine.PlannedLens(
                                "Model +21.0 D",
                                Optional.of(new PredictionBar(
                                        Dioptres.of(-0.3), Dioptres.of(0.35), Dioptres.of(-0.25))))),
                Optional.of(new EyeLine.Risk("1.06", "age 73")),
                List.of("The axial length lies outside what is usual.", "Something else."),
                Optional.of(CheckState.AWAITING_CONFIRMATION));
    }

    public static void main(String[] arguments) throws Exception {
        Map<String, Object> settings = Map.of(
                "lensward.record.url", "http://localhost:1/fhir",
                "camel.main.auto-startup", "false",
                "server.port", "0",
                DemoAccess.PASSWORD, PASSWORD,
                "spring.artemis.embedded.data-directory",
                        Files.createTempDirectory("queue").toString());
        try (Adapter adapter = Adapter.serve(settings, BoardConfiguration.class, DemoAccess.class, OwnLists.class)) {
            String base = "http://localhost:" + adapter.port();
            HttpClient http = HttpClient.newBuilder()
                    .cookieHandler(new CookieManager())
                    .build();
            String page = get(http, base + "/sign-in", "");
            String token = page.split("name=\"csrf\" content=\"")[1].split("\"")[0];
            http.send(
                    HttpRequest.newBuilder(URI.create(base + "/sign-in"))
                            .header("Content-Type", "application/x-www-form-urlencoded")
                            .POST(BodyPublishers.ofString("who=Ms+Vale&password=" + PASSWORD + "&_csrf="
                                    + URLEncoder.encode(token, StandardCharsets.UTF_8)))
                            .build(),
                    BodyHandlers.discarding());
            String whole = get(http, base + "/day/" + DAY, "");
            if (whole.split("data-words").length != EYES + 1) {
                throw new IllegalStateException("The page does not show " + EYES + " eyes");
            }
            String version = whole.split("data-version=\"")[1].split("\"")[0];
            time("the page with " + EYES + " eyes, first", http, base + "/day/" + DAY, "", 1);
            time("warming", http, base + "/day/" + DAY, "", 60);
            time("the page with " + EYES + " eyes", http, base + "/day/" + DAY, "", 100);
            time("news: there is none", http, base + "/day/" + DAY + "/list", version, 100);
        }
    }

    private static void time(String what, HttpClient http, String address, String seen, int times) throws Exception {
        double[] taken = new double[times];
        for (int turn = 0; turn < times; turn++) {
            long began = System.nanoTime();
            get(http, address, seen);
            taken[turn] = (System.nanoTime() - began) / 1e6;
        }
        Arrays.sort(taken);
        System.out.printf(
                Locale.ROOT, "%-34s best %7.1f, median %7.1f, worst %7.1f ms%n",
                what,
                taken[0],
                taken[times / 2],
                taken[times - 1]);
    }

    private static String get(HttpClient http, String address, String seen) throws Exception {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(address));
        if (!seen.isEmpty()) {
            request.header("Lensward-News", seen);
        }
        return http.send(request.build(), BodyHandlers.ofString()).body();
    }
}

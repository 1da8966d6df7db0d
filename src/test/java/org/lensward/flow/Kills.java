package org.lensward.flow;

import java.io.File;
import java.io.IOException;
import java.math.BigDecimal;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Observation;
import org.lensward.record.Fhir;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;

/**
 * An adapter that is killed outright again and again, at moments drawn from a seed, on one queue and one real record, while lengths keep
 * changing. {@code main} takes how often, and the seed.
 */
final class Kills implements AutoCloseable {

    private static final int LONGEST_LIFE_MILLIS = 1_500;
    private static final Duration LONG = Duration.ofSeconds(180);

    private final RunningDay day = new RunningDay();
    private final RecordClient record = RecordClient.at(URI.create(day.url()), Fhir.r4());
    private final Path folder = Files.createTempDirectory("lensward-kills");
    private final Random random;
    private int inMidWork;
    private int whileStarting;

    Kills(long seed) throws IOException {
        this.random = new Random(seed);
    }

    /**
     * How it went.
     *
     * @param kills how often it was killed
     * @param inMidWork how often bookings were left to plan at that moment
     * @param whileStarting how often it had not yet begun to work
     * @param bookings how many there are
     * @param wrong those that in the end have not exactly one current plan
     * @param took the whole time
     */
    record Figures(int kills, int inMidWork, int whileStarting, int bookings, List<String> wrong, Duration took) {}

    public static void main(String[] arguments) throws Exception {
        int kills = Integer.parseInt(arguments[0]);
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        try (Kills killed = new Kills(seed)) {
            Figures figures = killed.times(kills);
            System.out.println(figures);
            System.exit(figures.wrong().isEmpty() ? 0 : 1);
        }
    }

    Figures times(int kills) throws Exception {
        Instant start = Instant.now();
        for (int kill = 0; kill < kills; kill++) {
            change();
            live(kill);
        }
        Process last = adapter("org.lensward.Lensward", "run");
        RunningDay.await("every plan is current", LONG, () -> owed().isEmpty());
        last.destroy();
        if (!last.waitFor(60, TimeUnit.SECONDS)) {
            throw new AssertionError("It does not stop when asked");
        }
        return new Figures(
                kills, inMidWork, whileStarting, day.plans().size(), wrong(), Duration.between(start, Instant.now()));
    }

    /** A third of the lengths become longer by a hundredth of a millimetre. */
    private void change() {
        Bundle transaction = new Bundle().setType(Bundle.BundleType.TRANSACTION);
        new Shelf(record.gather(List.of("Observation?_count=1000")))
                .all(Observation.class)
                .filter(each -> each.getIdElement().getIdPart().startsWith("axial-length-") && each.hasValueQuantity())
                .filter(each -> random.nextInt(3) == 0)
                .forEach(each -> {
                    each.getValueQuantity()
                            .setValue(each.getValueQuantity().getValue().add(new BigDecimal("0.01")));
                    transaction
                            .addEntry()
                            .setResource(each)
                            .getRequest()
                            .setMethod(Bundle.HTTPVerb.PUT)
                            .setUrl(Shelf.name(each));
                });
        if (transaction.hasEntry()) {
            record.post(transaction);
        }
    }

    private void live(int kill) throws Exception {
        Path up = folder.resolve("up-" + kill);
        Process adapter = adapter(AdapterProcess.class.getName(), up.toString());
        boolean atStart = random.nextInt(5) == 0;
        int life = random.nextInt(LONGEST_LIFE_MILLIS);
        if (atStart) {
            whileStarting++;
        } else {
            RunningDay.await("the adapter works", LONG, () -> Files.exists(up));
        }
        Thread.sleep(life);
        adapter.destroyForcibly().waitFor(10, TimeUnit.SECONDS);
        if (!atStart && !owed().isEmpty()) {
            inMidWork++;
        }
    }

    /** Bookings of which anything is still to be written. */
    private List<String> owed() {
        Gatherer gatherer = new Gatherer(record);
        BookingPlanning planning =
                new BookingPlanning(new BundlePlanning(Fhir.r4(), PolicyFile.shipped(), Clock.system(ZoneOffset.UTC)));
        return day.plans().stream()
                .map(each -> new BookingName(
                        Shelf.name(each.booking()), Shelf.name(each.booking().getSubject())))
                .filter(name -> planning.isOwed(gatherer.gather(name.toString()), name))
                .map(BookingName::booking)
                .toList();
    }

    private List<String> wrong() {
        List<String> wrong = new ArrayList<>(owed());
        for (StoredPlan each : day.plans()) {
            String booking = each.booking().getIdElement().getIdPart();
            String identifier = "identifier=https://lensward.org/fhir/sid/eye-plan|" + booking;
            int plans = record.count("Procedure?status=preparation&" + identifier);
            int checks = record.count("Task?status=requested&" + identifier);
            int lenses = record.count("DeviceRequest?status=active&intent=plan&" + identifier);
            int expected = each.primary().isPresent() ? 1 : 0;
            if (plans != 1 || checks != expected || lenses != expected) {
                wrong.add(booking + ": " + plans + " plans, " + checks + " checks, " + lenses + " lenses");
            }
        }
        return wrong;
    }

    private Process adapter(String main, String argument) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(List.of("-XX:TieredStopAtLevel=1", "-Xshare:auto", "-Xmx400m"));
        day.settings().forEach((name, value) -> command.add("-D" + name + "=" + value));
        command.addAll(List.of("-Dserver.port=0", "-cp", System.getProperty("java.class.path"), main, argument));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(new File("target/killed-adapter.log")))
                .start();
    }

    @Override
    public void close() {
        day.close();
    }
}

package org.lensward.board.bank;

import java.lang.management.ManagementFactory;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.DeviceDefinition.DeviceNameType;
import org.hl7.fhir.r4.model.Location;
import org.lensward.board.store.BankSettings;
import org.lensward.board.store.StockDesk;
import org.lensward.board.store.StoreState;
import org.lensward.finding.Evidence;
import org.lensward.flow.PolicyFile;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Owner;
import org.lensward.lens.stock.UnitState;
import org.lensward.plan.Policy;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Shelf;
import org.lensward.record.bank.BankView;
import org.lensward.record.stock.StockSheet;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockServletContext;
import org.thymeleaf.context.WebContext;
import org.thymeleaf.spring6.SpringTemplateEngine;
import org.thymeleaf.templateresolver.ClassLoaderTemplateResolver;
import org.thymeleaf.web.servlet.JakartaServletWebApplication;

/**
 * What the Bank page costs with 20,000 cartons: the sheet from what is in memory, its HTML, and the stock check behind it. Prints figures;
 * run it on the test class path. Processor time, since other work on the machine would count in the wall clock's.
 */
public final class BankBenchmark {

    private static final int CARTONS = 20_000;
    private static final int RUNS = 60;
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    private BankBenchmark() {}

    public static void main(String[] arguments) {
        Policy policy = PolicyFile.shipped();
        Clock clock = Clock.systemUTC();
        Shelf shelf = shelf();
        List<LensUnit> units = units();
        StockSheet.Days days = new StockSheet.Days(TODAY, TODAY.plusDays(20), TODAY);
        SheetMaker maker =
                new SheetMaker(policy, new BankSettings(Duration.ofSeconds(5), Duration.ofSeconds(30), 21), clock);
        time("stock check behind", () -> StockSheet.of(shelf, units, policy.stock(), days));
        StoreState state = new StoreState(
                new BankView.Standing(units, List.of(), clock.instant()),
                Optional.of(new StockDesk.Checked(StockSheet.of(shelf, units, policy.stock(), days), shelf)),
                clock.instant(),
                false);
        time("sheet", () -> maker.sheet(state, Optional.empty()));
        time("mark", state::mark);
        SpringTemplateEngine engine = engine();
        String html = html(engine, maker.sheet(state, Optional.empty()));
        time("sheet and HTML", () -> html(engine, maker.sheet(state, Optional.empty())));
        System.out.printf("%,d cartons, %,d characters of HTML%n", units.size(), html.length());
    }

    private static void time(String what, Runnable work) {
        double[] took = new double[RUNS];
        for (int run = -RUNS / 2; run < RUNS; run++) {
            long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            work.run();
            took[Math.max(run, 0)] = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - start) / 1e6;
        }
        Arrays.sort(took);
        System.out.printf(
                "%-20s median %.1f ms of processor time, worst of %d %.1f ms%n",
                what, took[RUNS / 2], RUNS, took[RUNS - 1]);
    }

    private static SpringTemplateEngine engine() {
        ClassLoaderTemplateResolver resolver = new ClassLoaderTemplateResolver();
        resolver.setPrefix("templates/");
        resolver.setSuffix(".html");
        SpringTemplateEngine engine = new SpringTemplateEngine();
        engine.setTemplateResolver(resolver);
        return engine;
    }

    private static String html(SpringTemplateEngine engine, BankSheet sheet) {
        WebContext context = new WebContext(JakartaServletWebApplication.buildApplication(new MockServletContext())
                .buildExchange(new MockHttpServletRequest(), new MockHttpServletResponse()));
        context.setVariable("sheet", sheet);
        context.setVariable("signedIn", Optional.empty());
        return engine.process("bank", Set.of("sheet"), context);
    }

    private static Shelf shelf() {
        Bundle bundle = new Bundle();
        for (int model = 0; model < 12; model++) {
            DeviceDefinition made = new DeviceDefinition();
            made.setId("model-" + model);
            made.addDeviceName().setName("Model " + model).setType(DeviceNameType.MODELNAME);
            bundle.addEntry().setResource(made);
        }
        for (int store = 0; store < 3; store++) {
            Location place = new Location().setName("Store " + store);
            place.setId("store-" + store);
            bundle.addEntry().setResource(place);
        }
        return new Shelf(bundle);
    }

    private static List<LensUnit> units() {
        SplittableRandom random = new SplittableRandom(20261125);
        List<LensUnit> units = new ArrayList<>();
        for (int carton = 0; carton < CARTONS; carton++) {
            boolean reserved = random.nextInt(100) == 0;
            units.add(new LensUnit(
                    new Evidence("Device/unit-" + carton, "1", ""),
                    "DeviceDefinition/model-" + random.nextInt(12),
                    Dioptres.of(6 + random.nextInt(49) * 0.5),
                    Optional.empty(),
                    new LensUnit.Identity(
                            "09521234000013",
                            Optional.of("L" + random.nextInt(400)),
                            Optional.of("S" + carton),
                            TODAY.plusDays(random.nextInt(1_200))),
                    "Location/store-" + random.nextInt(3),
                    new Owner("Organization/hospital", false),
                    reserved ? UnitState.RESERVED : UnitState.AVAILABLE,
                    reserved ? Optional.of("ServiceRequest/b" + carton) : Optional.empty()));
        }
        return units;
    }
}

package straywire.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.remote.RemoteWebDriver;
import org.openqa.selenium.support.ui.WebDriverWait;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.module.LogWriter;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;
import straywire.sitting.Sitting;

/** The page in Debian's chromium; skipped where that or its driver is not installed. */
@Tag("slow")
class PageBrowserTest {
  private static final Path BROWSER = Path.of("/usr/bin/chromium");

  private static final Path DRIVER = Path.of("/usr/bin/chromedriver");

  private static final Duration PATIENCE = Duration.ofSeconds(30);

  private static final Module MODULE =
      ModuleFile.readShipped(Path.of("cases/beat-memory/module.yaml"), new ShippedParts());

  @TempDir private Path folder;

  private Path journal;
  private Sitting sitting;
  private PageServer page;
  private ChromeDriver browser;

  @BeforeEach
  void open() {
    assumeTrue(
        Files.isExecutable(BROWSER) && Files.isExecutable(DRIVER),
        "chromium or chromium-driver is not installed");
    journal = folder.resolve("journal.jsonl");
    serve(0);
    ChromeOptions options = new ChromeOptions();
    options.setBinary(BROWSER.toString());
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-dev-shm-usage",
        "--disable-background-networking",
        "--user-data-dir=" + folder.resolve("profile"));
    browser =
        new ChromeDriver(
            new ChromeDriverService.Builder()
                .usingDriverExecutable(new File(DRIVER.toString()))
                .build(),
            options);
    size(1280, 1000);
    browser.get(page.address().toString());
    await(() -> !browser.findElements(By.cssSelector("#chips .part")).isEmpty());
  }

  private void serve(int port) {
    sitting =
        Sitting.open(new Workbench(MODULE, RuleBase.shipped()), journal, LogWriter.Style.PLAIN);
    page = PageServer.serve(sitting, port);
  }

  @AfterEach
  void close() throws IOException {
    if (browser != null) {
      browser.quit();
    }
    if (page != null) {
      page.close();
      sitting.close();
    }
  }

  /** Of what the page has room for, not of the window; a headless window is never narrower. */
  private void size(int width, int height) {
    browser.manage().window().setSize(new Dimension(width, height));
    browser.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        java.util.Map.of(
            "width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 600));
  }

  private void await(BooleanSupplier condition) {
    new WebDriverWait(browser, PATIENCE)
        .ignoring(org.openqa.selenium.StaleElementReferenceException.class)
        .until(driver -> condition.getAsBoolean());
  }

  private WebElement button(String text) {
    return browser.findElement(
        By.xpath("//button[not(@hidden)][contains(normalize-space(.), '" + text + "')]"));
  }

  /** Taps and waits until the page shows what came of it. */
  private void tap(WebElement element) {
    String before = version();
    element.click();
    await(() -> !version().equals(before));
  }

  private String version() {
    return browser.findElement(By.tagName("body")).getDomAttribute("data-version");
  }

  private String stage() {
    return browser.findElement(By.tagName("body")).getDomAttribute("data-stage");
  }

  /** Taps the lamps of a word until they look as said. */
  private void lamps(String word, String marks) {
    List<String> labels = MODULE.lampWord(word).orElseThrow().members();
    for (int i = 0; i < labels.size(); i++) {
      By lamp = By.cssSelector("[data-lamp=\"" + labels.get(i) + "\"]");
      for (int taps = 0; !mark(lamp).equals(marks.substring(i, i + 1)); taps++) {
        assertThat(taps).as("taps at " + labels.get(i)).isLessThan(5);
        browser.findElement(lamp).click();
      }
    }
  }

  private String mark(By lamp) {
    return browser.findElement(lamp).getDomAttribute("data-mark");
  }

  private void picture(String name) throws IOException {
    Path shots = Path.of("target/screenshots");
    Files.createDirectories(shots);
    Object height =
        browser.executeScript("return Math.max(document.body.scrollHeight, innerHeight)");
    java.util.Map<String, Object> shot =
        browser.executeCdpCommand(
            "Page.captureScreenshot",
            java.util.Map.of(
                "captureBeyondViewport",
                true,
                "clip",
                java.util.Map.of(
                    "x", 0,
                    "y", 0,
                    "width", browser.executeScript("return innerWidth"),
                    "height", height,
                    "scale", 1)));
    Files.write(
        shots.resolve(name + ".png"),
        java.util.Base64.getDecoder().decode(String.valueOf(shot.get("data"))));
  }

  @ParameterizedTest(name = "{0} x {1}")
  @CsvSource({"360, 740", "1280, 1000"})
  void aWholeSittingIsTappedFromPowerUpToItsFinding(int width, int height) throws Exception {
    size(width, height);
    picture(width + "-start");
    lamps("memory", "01110100");
    lamps("bus", "00000000");
    tap(button("All as shown"));
    lamps("memory", "10010100");
    picture(width + "-lamps");
    tap(button("All as shown"));
    assertThat(stage()).isEqualTo("searching");
    lamps("memory", "00000100");
    tap(button("All as shown"));
    assertThat(browser.findElement(By.cssSelector("[data-end=\"U2.3\"]")).getDomAttribute("class"))
        .contains("touch");
    picture(width + "-volts");
    for (String key : "1.45".split("")) {
      browser.findElement(By.xpath("//div[@class='keys']/button[.='" + key + "']")).click();
    }
    tap(button("Enter volts"));
    assertThat(browser.findElement(By.id("ranking")).getText())
        .contains("jumper from U1 pin 3 (/WE) to U2 pin 3 (/WE) is missing");
    picture(width + "-repair");
    tap(button("Repaired"));
    assertThat(stage()).isEqualTo("confirming");
    for (int round = 0; round < 20 && stage().equals("confirming"); round++) {
      tap(button("All as shown"));
    }
    assertThat(stage()).isEqualTo("confirmed");
    tap(browser.findElement(By.id("finish")));
    assertThat(stage()).isEqualTo("closed");
    picture(width + "-closed");
    Object wider =
        browser.executeScript("return document.documentElement.scrollWidth - innerWidth");
    assertThat(((Number) wider).intValue()).as("pixels to scroll sideways").isNotPositive();
  }

  @Test
  void ownWordsUndoAndReloadKeepTheSitting() {
    own("measure U1.16 5.0");
    own("note the supply lead was loose");
    browser.navigate().refresh();
    await(() -> browser.findElements(By.cssSelector("#entries li")).size() == 2);
    tap(browser.findElement(By.id("undo")));
    assertThat(browser.findElements(By.cssSelector("#entries .withdrawn"))).hasSize(1);
    browser.findElement(By.id("own")).sendKeys("measure U9.1 5", Keys.ENTER);
    await(() -> browser.findElement(By.id("trouble")).getText().contains("U9"));
  }

  private void own(String words) {
    String before = version();
    browser.findElement(By.id("own")).sendKeys(words, Keys.ENTER);
    await(() -> !version().equals(before));
  }

  @Test
  void twoWindowsSeeEachOthersEntries() {
    String first = browser.getWindowHandle();
    browser.switchTo().newWindow(WindowType.WINDOW);
    browser.get(page.address().resolve("/").toString());
    await(() -> !browser.findElements(By.cssSelector("#chips .part")).isEmpty());
    own("power on");
    browser.switchTo().window(first);
    await(() -> version().equals("1"));
    assertThat(browser.findElement(By.id("entries")).getText()).contains("power on");
  }

  @Test
  void aServerStartedAnewGoesOnWithTheJournal() throws Exception {
    own("power on");
    page.close();
    sitting.close();
    await(() -> browser.findElement(By.id("line")).isDisplayed());
    serve(0);
    browser.get(page.address().toString());
    await(() -> browser.findElements(By.cssSelector("#entries li")).size() == 1);
    assertThat(browser.findElement(By.id("entries")).getText()).contains("power on");
  }

  @Test
  void theKeyboardAloneReachesAndEntersAnAnswer() {
    String before = version();
    WebElement asShown = button("All as shown");
    for (int tabs = 0; tabs < 60 && !focused(browser).equals(asShown); tabs++) {
      focused(browser).sendKeys(Keys.TAB);
    }
    assertThat(focused(browser)).isEqualTo(asShown);
    focused(browser).sendKeys(Keys.ENTER);
    await(() -> !version().equals(before));
  }

  private static WebElement focused(RemoteWebDriver browser) {
    return browser.switchTo().activeElement();
  }

  @Test
  void anUrgentCautionCoversThePageUntilItIsAnswered() throws Exception {
    own("power on");
    own("symptom smell");
    WebElement stop = browser.findElement(By.id("stop"));
    await(stop::isDisplayed);
    assertThat(stop.getSize().getWidth()).isGreaterThanOrEqualTo(1280);
    picture("1280-stop");
    stop.sendKeys(Keys.ESCAPE);
    assertThat(stop.isDisplayed()).isTrue();
    tap(button("Power is off"));
    assertThat(browser.findElement(By.id("entries")).getText()).contains("power off");
  }

  @Test
  void nothingTheBrowserWasToldNotToLoadWasTried() {
    Object entries =
        browser.executeScript(
            "return performance.getEntriesByType('resource').map(e => e.name).filter(n =>"
                + " !n.startsWith(location.origin)).length");
    assertThat(((Number) entries).intValue()).isZero();
    assertThat(
            browser.manage().logs().get("browser").getAll().stream()
                .map(entry -> entry.getMessage())
                .toList())
        .as("complaints of the browser")
        .isEmpty();
  }

  @Test
  void whatTheStepAsksForIsTickedOffAndWrittenDownOnce() {
    WebElement power = browser.findElement(By.cssSelector("[data-control=\"power\"]"));
    assertThat(power.getText()).contains("to on");
    power.click();
    await(
        () ->
            browser
                .findElement(By.cssSelector("[data-control=\"power\"]"))
                .getText()
                .contains("done"));
    assertThat(version()).isEqualTo("0");
    lamps("memory", "01110100");
    tap(button("All as shown"));
    assertThat(browser.findElement(By.id("entries")).getText()).containsOnlyOnce("power on");
  }

  @Test
  void aControlIsFlippedInStepWithTheBench() {
    own("power on");
    tap(browser.findElement(By.cssSelector("[data-control=\"D0\"]")));
    assertThat(browser.findElement(By.id("entries")).getText()).contains("set D0 high");
    assertThat(
            browser
                .findElement(By.cssSelector("[data-control=\"D0\"]"))
                .getDomAttribute("aria-checked"))
        .isEqualTo("true");
  }

  @Test
  void expectedLevelsOfEveryPinAreShownForTheMeter() {
    own("power on");
    browser.findElement(By.id("show-levels")).click();
    await(() -> browser.findElements(By.cssSelector("#levels table")).size() == 5);
    assertThat(browser.findElement(By.id("levels")).getText()).contains("VCC");
  }

  @Test
  void theNotchTurnsWithTheBoard() throws Exception {
    browser.findElement(By.id("notch-left")).click();
    assertThat(browser.findElements(By.cssSelector("#chips svg.lying"))).hasSize(5);
    picture("1280-notch-left");
    browser.navigate().refresh();
    await(() -> browser.findElements(By.cssSelector("#chips svg.lying")).size() == 5);
  }
}
